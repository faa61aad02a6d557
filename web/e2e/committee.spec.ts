import { AxeBuilder } from '@axe-core/playwright'
import { expect, test, turnTo, untilSent } from './club.ts'

/** Every page of the app that stands at an address of its own. */
const PAGES = [
  '/',
  '/crew',
  '/course',
  '/green/g01',
  '/green/g01/outline',
  '/green/g01/runs',
  '/prescription',
  '/plan',
  '/sheets',
  '/weather',
  '/weather/history',
  '/stores',
  '/fixtures',
  '/people',
  '/machines',
  '/members',
  '/account',
  '/courses',
  '/paper',
  '/settings',
  '/more',
] as const

/** What a reader may press: it changes nothing that others see. */
const LOOKS =
  /^(\d+ min|Print|everybody|As the device|Day|Night|Where does this number come from\?|Copy.*|Save.*|Download.*|Download the course as GeoJSON|Show.*|Hide.*|Leave|Take this device out|Ask the browser.*|.*without a line.*|close|Close|In play|.*curve.*|What if.*|Again|Ask again)/iu

test('somebody of the committee reads every page, and none offers a change', async ({
  page,
  club,
  browser,
}, info) => {
  test.setTimeout(300_000)
  await turnTo(page, club, '/plan')
  await expect(page.getByRole('button', { name: 'Settle this plan' })).toBeVisible({ timeout: 90_000 })
  await page.getByRole('button', { name: 'Settle this plan' }).click()
  await untilSent(page)
  await page.goto(`${club.address()}/account`)
  await page.getByLabel('Name', { exact: true }).fill('Ada Birch')
  await page.getByLabel('Password', { exact: true }).fill('wet hollow front left')
  await page.getByRole('button', { name: 'Make the account' }).click()
  await page.waitForURL(`${club.address()}/`)
  await turnTo(page, club, '/account')
  await page.getByText('Committee', { exact: true }).click()
  await page.getByLabel('Name of the person or device').fill('Cora Oak')
  await page.getByRole('button', { name: 'Make a link' }).click()
  const link = await page.getByRole('textbox', { name: 'Copy the link' }).inputValue()

  const context = await browser.newContext({ viewport: { width: 390, height: 844 } })
  const reader = await context.newPage()
  const refused: string[] = []
  reader.on('response', (response) => {
    if (response.status() === 403 || response.request().method() !== 'GET')
      refused.push(`${response.request().method()} ${response.url()} ${response.status()}`)
  })
  await reader.goto(link)
  await reader.getByRole('button', { name: 'Join with this device' }).click()
  await reader.waitForURL(`${club.address()}/`)
  refused.length = 0
  const offered: string[] = []
  for (const path of PAGES) {
    await turnTo(reader, club, path)
    if (path !== '/courses') await expect(reader.getByText('You can read everything here')).toBeVisible()
    // What stands behind a row may offer something too.
    for (const fold of await reader.locator('main details:not([open]) > summary').all())
      await fold.click({ timeout: 2_000 }).catch(() => undefined)
    const controls = await reader
      .locator('main :is(button, input, select, textarea, [contenteditable])')
      .evaluateAll((all) =>
        all
          .filter(
            (one) =>
              one.checkVisibility() && !one.matches(':disabled') && !one.matches('[readonly], .figure-from'),
          )
          .map((one) => {
            const label = one instanceof HTMLButtonElement ? null : (one as HTMLInputElement).labels?.[0]
            return `${one.tagName.toLowerCase()} ${one.getAttribute('aria-label') ?? label?.textContent ?? one.textContent}`.trim()
          }),
      )
    offered.push(...controls.map((control) => `${path}: ${control}`))
    await reader.screenshot({
      path: info.outputPath(`reads${path.replaceAll('/', '-')}.png`),
      fullPage: true,
    })
  }
  await info.attach('offered', { body: offered.join('\n') })
  console.log(offered.join('\n'))
  expect(refused).toEqual([])
  await turnTo(reader, club, '/prescription')
  expect((await new AxeBuilder({ page: reader }).analyze()).violations).toEqual([])
  await context.close()
})
