import { AxeBuilder } from '@axe-core/playwright'
import { expect, test, turnTo } from './club.ts'
import { PAGES } from './pages.ts'

const SCREENS = [
  { name: 'desk by day', viewport: { width: 1280, height: 900 }, colorScheme: 'light' },
  { name: 'phone by night', viewport: { width: 390, height: 844 }, colorScheme: 'dark' },
] as const

for (const { name, viewport, colorScheme } of SCREENS)
  test.describe(name, () => {
    test.use({ viewport, colorScheme })

    test(`every page reads well for everybody: ${name}`, async ({ page, club }) => {
      test.setTimeout(480_000)
      await turnTo(page, club, '/plan')
      await expect(page.getByText('The checker finds nothing wrong')).toBeVisible({ timeout: 90_000 })
      for (const path of PAGES) {
        await turnTo(page, club, path)
        await expect(page.getByText('Working it out')).toHaveCount(0)
        await expect(page.getByText('Laying out the runs')).toHaveCount(0)
        if (path === '/sheets') await expect(page.locator('.day-sheet').first()).toBeVisible()
        const { violations } = await new AxeBuilder({ page }).analyze()
        expect(violations.map(({ id, nodes }) => `${path} ${id}: ${nodes[0]?.html}`)).toEqual([])
      }
    })
  })

for (const width of [360, 390])
  test(`nothing runs over the edge of a phone ${width} px wide, and targets fit a thumb`, async ({
    page,
    club,
  }) => {
    await page.setViewportSize({ width, height: 780 })
    await turnTo(page, club, '/plan')
    await expect(page.getByText('The checker finds nothing wrong')).toBeVisible({ timeout: 90_000 })
    for (const path of PAGES) {
      await turnTo(page, club, path)
      const over = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      )
      expect(`${path} ${over}`).toBe(`${path} 0`)
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
