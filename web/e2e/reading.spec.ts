import { expect, test, turnTo } from './club.ts'
import { PAGES } from './pages.ts'
import { overEdgePx, readsWell } from './readable.ts'

test.use({ begins: 'settled' })

const DESK_BY_DAY = { viewport: { width: 1280, height: 900 }, colorScheme: 'light' } as const
const PHONE_BY_NIGHT = { viewport: { width: 390, height: 844 }, colorScheme: 'dark' } as const

/** What of a page comes after the rest, once it is worked out or its turn to be drawn has come: a sheet of a post, the last of the board's three days. */
const LATE_PARTS: Readonly<Partial<Record<(typeof PAGES)[number], string>>> = {
  '/sheets': '.day-sheet',
  '/plan': '.board .drawings > :nth-child(3) svg',
}

for (const { name, ...look } of [
  { name: 'at a desk by day', begins: 'settled', ...DESK_BY_DAY },
  { name: 'on a phone by night', begins: 'settled', ...PHONE_BY_NIGHT },
  { name: 'on a phone by night before a plan is settled', begins: 'new', ...PHONE_BY_NIGHT },
] as const)
  test.describe(name, () => {
    test.use(look)

    test(`every page reads well for everybody ${name}`, async ({ page, club }) => {
      test.setTimeout(480_000)
      for (const path of PAGES) {
        await turnTo(page, club, path)
        await expect(page.getByText('Working it out')).toHaveCount(0)
        await expect(page.getByText('Laying out the runs')).toHaveCount(0)
        const late = LATE_PARTS[path]
        if (late !== undefined) await expect(page.locator(late).first()).toBeVisible()
        await readsWell(page)
      }
    })
  })

for (const width of [360, 390])
  test(`nothing runs over the edge of a phone ${width} px wide, and targets fit a thumb`, async ({
    page,
    club,
  }) => {
    await page.setViewportSize({ width, height: 780 })
    for (const path of PAGES) {
      await turnTo(page, club, path)
      expect(await overEdgePx(page), path).toBe(0)
    }
    await turnTo(page, club, '/')
    const heights = await page
      .locator('nav a:visible')
      .evaluateAll((links) => links.map((link) => link.clientHeight))
    expect(Math.min(...heights)).toBeGreaterThanOrEqual(56)
  })

test('on a phone the section of a green stands under a slider from as it is to finished', async ({
  page,
  club,
}) => {
  await page.setViewportSize({ width: 390, height: 844 })
  await turnTo(page, club, '/green/g01')
  await expect(page.locator('.section svg')).toHaveCount(1)
  await expect(page.locator('[data-part=hole]')).toHaveCount(2)
  await page.getByRole('slider').fill('0')
  await expect(page.locator('[data-part=hole]')).toHaveCount(0)
  await page.locator('[data-part=layer]').first().click()
  await expect(page.locator('.told')).toContainText('%')
})
