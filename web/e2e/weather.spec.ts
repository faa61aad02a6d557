import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test as base, type Page } from '@playwright/test'
import { readsWell } from './readable.ts'
import { startClubServer, type ClubServer } from './server.ts'
import { startWeatherService, type WeatherService } from './weather-service.ts'

/** The demo holds its clock in the evening of Sunday 9 August 2026; the service’s hours begin with that day. */
const FIRST_DAY = '2026-08-09'

type Weathered = { readonly service: WeatherService; readonly server: () => ClubServer }

/** A club whose operator has named a weather service on this machine. */
const test = base.extend<{ weathered: Weathered }>({
  weathered: async ({ page }, use) => {
    const dataDir = await mkdtemp(join(tmpdir(), 'swardwright-weather-'))
    const service = await startWeatherService(FIRST_DAY)
    const server = await startClubServer(dataDir, 0, ['--weather-url', service.address])
    const faults: string[] = []
    page.on('pageerror', (error) => faults.push(error.message))
    await use({ service, server: () => server })
    await server.stop()
    await service.close()
    await rm(dataDir, { recursive: true, force: true })
    expect(faults).toEqual([])
  },
})

const turnTo = async (page: Page, { server }: Weathered, path = '/weather'): Promise<void> => {
  await page.goto(`${server().address}${path}`)
  await expect(page.locator('main > header h1')).toBeVisible()
}

/** Names of the parts of one kind in the first strip. */
const parts = (page: Page, kind: string): Promise<readonly (string | null)[]> =>
  page
    .locator('details[open] svg')
    .first()
    .locator(`[data-part=${kind}]`)
    .evaluateAll((found) => found.map((one) => one.getAttribute('aria-label')))

test('the manager sees where the weather comes from, by the hour, and plans by it', async ({
  page,
  weathered,
}) => {
  await turnTo(page, weathered)
  await expect(page.getByText(/Fresh:.*forecast of 127\.0\.0\.1/u)).toBeVisible()
  expect(weathered.service.asked[0]).toContain('/v1/forecast?')
  // Yesterday’s demo forecast is what plans go by until somebody says otherwise.
  await expect(page.locator('.day-summary')).toHaveCount(14)
  expect(await parts(page, 'hour')).toHaveLength(24)
  expect((await parts(page, 'workable')).some((words) => words?.startsWith('dragging in:'))).toBe(true)
  // Chances are worked out beside the page, so they come a moment later.
  await expect
    .poll(async () => (await parts(page, 'bars')).map((words) => words?.split(':')[0]))
    .toEqual(['wind m/s', 'rain, %', 'drag in 3 h, %'])
  // 10 forecasts; rain comes on Tuesday 11 August from 13:00 on the course’s clock, in each other one an hour later.
  await page.locator('.day-summary', { hasText: 'Tue 11 Aug' }).click()
  await expect(page.locator('[data-part=hour][aria-label="14:00, rain 1.6 mm"]')).toHaveCount(1)
  await expect(page.locator('.facts > div', { hasText: 'Wed 12 Aug' })).toContainText('%')

  await page.getByRole('button', { name: 'Plan by this forecast' }).click()
  await expect(page.getByText(/Plans go by 127\.0\.0\.1/u)).toBeVisible()
  await turnTo(page, weathered, '/plan')
  // The first plan may have been made by the forecast before; then the page says that it no longer holds.
  await page.getByRole('button', { name: 'Plan again' }).click()
  await expect(page.getByText('The checker finds nothing wrong')).toBeVisible({ timeout: 90_000 })
})

test('a figure tells where it comes from', async ({ page, weathered }) => {
  await turnTo(page, weathered)
  await page.locator('.facts > div', { hasText: 'Water that grass uses' }).first().getByRole('button').click()
  const panel = page.getByRole('dialog')
  await expect(panel.getByText('In the catalogue: weather.referenceEvapotranspiration')).toBeVisible()
  await expect(panel.getByText('Lowest air temperature of the day')).toBeVisible()
})

test('a service that fails is told in words, and the last answer stays; so it does without any server', async ({
  page,
  weathered,
}) => {
  await turnTo(page, weathered)
  await expect(page.getByText('Fresh:')).toBeVisible()
  await expect(page.locator('.day-summary')).toHaveCount(14)
  await page.locator('summary', { hasText: 'The weather service' }).click()
  await expect(page.getByText(/Sent: \d+\.\d+, -?\d+\.\d+, and nothing else/u)).toBeVisible()
  await page.getByRole('button', { name: 'Turn it off' }).click()
  await expect(page.getByText(/Off:.*nothing is sent out/u)).toBeVisible()

  await weathered.server().stop()
  // The page is loaded; its data come from this device alone from here on.
  await page.getByRole('link', { name: 'Record and climate of the course' }).click()
  await page.getByRole('link', { name: 'Weather ahead' }).click()
  await expect(page.getByText('No line to the club’s server:')).toBeVisible()
  await expect(page.locator('.day-summary').first()).toBeVisible()
})

test('a web page instead of weather is named as such', async ({ page, weathered }) => {
  weathered.service.mood = 'page'
  await turnTo(page, weathered)
  await expect(page.getByText(/Nothing yet:.*a web page came instead of weather/u)).toBeVisible()
})

/** Ten days in the national service’s layout, one of them with a word for rain. */
const RECORD = [
  'date,rain,maxtp,mintp,wdsp',
  ...Array.from(
    { length: 10 },
    (_, i) => `2024-06-${String(i + 1).padStart(2, '0')},${i === 4 ? 'wet' : i % 3},18,9,8`,
  ),
].join('\n')

test('a record is brought in, its faults told by row, and all devices have it', async ({
  page,
  context,
  weathered,
}) => {
  await turnTo(page, weathered, '/weather/history')
  await expect(page.getByText('Not your course:')).toBeVisible()
  await expect(page.locator('[data-part=month]')).toHaveCount(12)
  const file = page.getByLabel('File of daily weather (CSV)')
  await file.setInputFiles({ name: 'bad.csv', mimeType: 'text/csv', buffer: Buffer.from('a,b\n1,2\n') })
  await expect(page.getByText(/Not brought in:.*the layout is not known/u)).toBeVisible()
  await file.setInputFiles({ name: 'record.csv', mimeType: 'text/csv', buffer: Buffer.from(RECORD) })
  await expect(page.getByText(/Brought in: 9 days/u)).toBeVisible()
  await expect(
    page.getByText('Row 6: rain is ‘wet’, which is no number'.replaceAll(/[‘’]/gu, "'")),
  ).toBeVisible()
  await expect(page.getByText('Not your course:')).toHaveCount(0)

  const other = await context.newPage()
  await turnTo(other, weathered, '/weather/history')
  await expect(other.getByText('From the file record.csv')).toBeVisible()
})

test('a record in a layout of its own is read by a map of its columns', async ({ page, weathered }) => {
  await turnTo(page, weathered, '/weather/history')
  await page.getByText('Another', { exact: true }).click()
  for (const [label, column] of [
    ['Day', 'Date'],
    ['Rain', 'In'],
    ['Coldest', 'Low'],
    ['Warmest', 'High'],
  ] as const) {
    await page.getByLabel(label, { exact: true }).fill(column)
    await page.getByLabel(label, { exact: true }).blur()
  }
  await page.getByLabel('Rain in').selectOption('in')
  await page.getByLabel('Temperature in').selectOption('F')
  await page.getByLabel('File of daily weather (CSV)').setInputFiles({
    name: 'own.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from('Date,In,Low,High\n2024-06-01,0.1,50,68\n'),
  })
  await expect(page.getByText(/Brought in: 1 day/u)).toBeVisible()
})

test.describe('on a phone in Auckland', () => {
  test.use({ timezoneId: 'Pacific/Auckland', viewport: { width: 390, height: 844 } })

  test('hours are those of the course’s clock', async ({ page, weathered }) => {
    await turnTo(page, weathered)
    await expect(page.getByText('Europe/London')).toBeVisible()
    await page.locator('.day-summary', { hasText: 'Tue 11 Aug' }).click()
    // 12:00 UTC is 13:00 in London, and midnight in Auckland.
    await expect(page.locator('[data-part=hour][aria-label="13:00, rain 1.6 mm"]')).toHaveCount(1)
    await expect(page.locator('[data-part=hour][aria-label^="19:00, dry"]').last()).toBeVisible()
  })
})

for (const { name, viewport, colorScheme } of [
  { name: 'desk by day', viewport: { width: 1280, height: 900 }, colorScheme: 'light' },
  { name: 'phone by night', viewport: { width: 390, height: 844 }, colorScheme: 'dark' },
] as const)
  test.describe(name, () => {
    test.use({ viewport, colorScheme })

    test(`the weather pages read well for everybody: ${name}`, async ({ page, weathered }) => {
      test.setTimeout(240_000)
      for (const path of ['/weather', '/weather/history']) {
        await turnTo(page, weathered, path)
        await expect(page.locator('svg').first()).toBeVisible()
        // Two days, and all that is folded below them.
        const folds = page.locator('details > summary')
        for (const at of [1, -1, -2, -3])
          if ((await folds.nth(at).locator('..').getAttribute('open')) === null) await folds.nth(at).click()
        await readsWell(page)
      }
    })
  })
