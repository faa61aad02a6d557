import { readFile } from 'node:fs/promises'
import type { Page } from '@playwright/test'
import { expect, test, turnTo, untilSent, type Club } from './club.ts'
import { faultsOf, overEdgePx } from './readable.ts'

test.use({ begins: 'settled' })

const openRuns = async (page: Page, club: Club, path: string): Promise<void> => {
  await turnTo(page, club, path)
  await expect(page.getByText('Laying out the runs')).toHaveCount(0)
  await expect(page.locator('[data-part="run"]').first()).toBeVisible()
}

const savedText = async (page: Page, button: string): Promise<string> => {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button }).click(),
  ])
  return readFile(await download.path(), 'utf8')
}

test('runs of a green stand still in their order, tell where their time comes from, and go along as files', async ({
  page,
  club,
}) => {
  await page.setViewportSize({ width: 360, height: 780 })
  await openRuns(page, club, '/green/g07/runs')
  const runs = await page.locator('[data-part="run"]').count()
  await expect(page.getByText(`All ${runs} runs`)).toBeVisible()
  await expect(page.locator('[data-part="start"]')).toHaveCount(1)
  expect(await overEdgePx(page)).toBe(0)
  expect(await faultsOf(page)).toEqual([])

  await page.getByRole('button', { name: 'One on' }).click()
  await expect(page.getByText(`Run 1 of ${runs}:`)).toBeVisible()
  await page.getByRole('button', { name: 'Show all' }).click()

  await page.locator('.figure button.figure-from').first().click()
  await expect(page.getByRole('heading', { name: 'Time of one pass over a green' })).toBeVisible()
  await page.keyboard.press('Escape')

  const geojson: unknown = JSON.parse(await savedText(page, 'Runs as GeoJSON'))
  expect(geojson).toMatchObject({ type: 'FeatureCollection' })
  expect((geojson as { features: unknown[] }).features).toHaveLength(runs)
  expect((await savedText(page, 'Runs as GPX')).match(/<rte>/gu)).toHaveLength(runs)
})

test('dresser loads have strokes of their own, with what is in each', async ({ page, club }) => {
  await openRuns(page, club, '/green/g07/runs')
  const dressing = page.locator('option', { hasText: /^dress/u }).first()
  await page.getByLabel('Work and machine').selectOption((await dressing.getAttribute('value')) ?? '')
  await expect(page.getByRole('heading', { name: 'Dresser loads' })).toBeVisible()
  const loads = await page.locator('[data-part="load"]').count()
  expect(loads).toBeGreaterThan(1)
  await expect(page.locator('tbody tr')).toHaveCount(loads)
  await page.locator('tbody button.figure-from').first().click()
  await expect(page.getByRole('heading', { name: 'Sand for some runs of the dresser' })).toBeVisible()
})

test('a heading that was driven is not proposed again, and another one can be chosen', async ({
  page,
  club,
}) => {
  await openRuns(page, club, '/green/g04/runs')
  const heading = page.locator('.figure', { hasText: 'Heading' })
  const degrees = async () => Number(/(\d+)°/u.exec((await heading.textContent()) ?? '')?.[1])
  const first = await degrees()
  await page.getByRole('button', { name: 'It was driven this way' }).click()
  await expect(page.getByText('Last time,')).toBeVisible()
  await expect(async () => {
    const apart = Math.abs((await degrees()) - first) % 180
    expect(Math.min(apart, 180 - apart)).toBeGreaterThanOrEqual(15 - 1)
  }).toPass()
  await untilSent(page)

  await page.locator('summary', { hasText: 'Another heading' }).click()
  await page.getByRole('button', { name: '3 to 9' }).click()
  await expect(heading).toContainText('90°')
  await page.reload()
  await expect(heading).toContainText('90°')
})

test('who wants no motion is offered none', async ({ page, club }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' })
  await openRuns(page, club, '/green/g07/runs')
  await expect(page.getByRole('button', { name: 'One on' })).toBeVisible()
  await expect(page.getByRole('button', { name: 'Show it being driven' })).toHaveCount(0)
})

test('on paper the runs stand with their figures, and no button', async ({ page, club }) => {
  await openRuns(page, club, '/green/g07/runs')
  await page.emulateMedia({ media: 'print' })
  await expect(page.locator('[data-part="run"]').first()).toBeVisible()
  await expect(page.getByText('Length of all runs')).toBeVisible()
  await expect(page.locator('.figure', { hasText: 'Time' }).locator('.value')).toContainText(/\d min/u)
  await expect(page.locator('button:not(.figure-from):visible')).toHaveCount(0)
})

test('an outline is put right by keyboard alone: area told live, a crossing refused with its place, then kept', async ({
  page,
  club,
}) => {
  await page.setViewportSize({ width: 360, height: 780 })
  await turnTo(page, club, '/green/g07/outline')
  await expect(page.getByText('376')).not.toHaveCount(0)
  expect(await overEdgePx(page)).toBe(0)
  await page.getByText('Corners in metres').click()
  const corner = page.getByRole('group', { name: 'Corner 1', exact: true })
  // Corner 1 lies on the northern edge: far to the south it is beyond the edge across.
  const north = corner.getByLabel('North')
  const before = await north.inputValue()
  await north.fill('-60')
  await north.press('Tab')
  await expect(page.getByText('This will not do:')).toBeVisible()
  await expect(page.locator('[data-part="fault"]')).toHaveCount(1)
  await expect(page.getByRole('button', { name: 'Keep this outline' })).toBeDisabled()
  expect(await faultsOf(page)).toEqual([])

  await north.fill(String(Number(before) + 2))
  await north.press('Tab')
  await expect(page.getByText('so far 376')).toBeVisible()
  await page.getByRole('button', { name: 'Keep this outline' }).click()
  await expect(page.getByText('Runs and times follow it')).toBeVisible()
  await untilSentNarrow(page, club)
  await turnTo(page, club, '/green/g07')
  await expect(page.locator('.over')).not.toContainText('376')
})

/** On a phone the line that says so stands under ‘More’. */
const untilSentNarrow = async (page: Page, club: Club): Promise<void> => {
  await page.setViewportSize({ width: 1280, height: 900 })
  await turnTo(page, club, '/course')
  await untilSent(page)
}

test('an outline is walked with the phone: accuracy told, closed, kept', async ({ page, context, club }) => {
  test.setTimeout(180_000)
  await context.grantPermissions(['geolocation'])
  // A circle of 10 m about a point some way off the seventh green: pi x 100 = 314 m2.
  const middle = { latitude: 53.7135, longitude: -4.9281 }
  const stand = (angle: number, accuracy = 4) =>
    context.setGeolocation({
      latitude: middle.latitude + (10 * Math.sin(angle)) / 111_299.6,
      longitude: middle.longitude + (10 * Math.cos(angle)) / 66_030.7,
      accuracy,
    })
  await stand(0)
  await turnTo(page, club, '/green/g07/outline')
  await page.getByRole('button', { name: 'Start walking' }).click()
  await expect(page.getByText('± 4 m')).toBeVisible()
  const kept = page.locator('.facts.large div', { hasText: 'Positions kept' }).locator('dd')
  for (let k = 1; k < 32; k++) {
    await stand((2 * Math.PI * k) / 32)
    await expect(kept).toContainText(String(k + 1))
    if (k === 8) {
      await page.getByRole('button', { name: 'I am back where I began' }).click()
      await expect(page.getByText('The walk ends')).toBeVisible()
    }
  }
  await page.getByRole('button', { name: 'I am back where I began' }).click()
  await expect(page.getByText('The walk closed to 2 m')).toBeVisible()
  const area = page.locator('.figure', { hasText: 'Area' }).locator('.value')
  await expect(async () => {
    expect(Math.abs(Number.parseFloat((await area.textContent()) ?? '') - 314)).toBeLessThan(8)
  }).toPass()
  await page.getByRole('button', { name: 'Keep this outline' }).click()
  await untilSent(page)
})

test('the map opens on plain paper without asking anybody, and an outline is drawn on it', async ({
  page,
  club,
}) => {
  test.setTimeout(180_000)
  const elsewhere: string[] = []
  page.on('request', (request) => {
    if (!request.url().startsWith(club.address()) && request.url().startsWith('http'))
      elsewhere.push(request.url())
  })
  await turnTo(page, club, '/green/g07/outline')
  await page.getByRole('button', { name: 'Open the map' }).click()
  const map = page.locator('.draw-map')
  await expect(map).toHaveAttribute('data-state', 'open')
  await page.getByRole('button', { name: 'Draw a new one' }).click()
  const box = await map.boundingBox()
  if (box === null) throw new Error('the map has no place on the page')
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
  for (const [dx, dy] of [
    [-90, -80],
    [90, -80],
    [90, 80],
    [-90, 80],
    [-90, -80],
  ] as const) {
    await page.mouse.move(x + dx, y + dy, { steps: 4 })
    await page.mouse.click(x + dx, y + dy)
    await page.waitForTimeout(350)
  }
  await expect(page.getByText('so far 376')).toBeVisible()
  await page.getByText('Corners in metres').click()
  await expect(page.getByRole('group', { name: /^Corner \d+$/u })).toHaveCount(4)
  expect(elsewhere).toEqual([])
})

const KML = `<?xml version="1.0"?><kml xmlns="http://www.opengis.net/kml/2.2"><Placemark><name>Seven</name><Polygon><outerBoundaryIs><LinearRing>
<coordinates>-4.9281,53.7135 -4.9278,53.7135 -4.9278,53.7137 -4.9281,53.7137 -4.9281,53.7135</coordinates></LinearRing></outerBoundaryIs></Polygon></Placemark></kml>`

test('an outline is taken from a map file, and a file that is none is refused in one sentence', async ({
  page,
  club,
}) => {
  await turnTo(page, club, '/green/g07/outline')
  const chooser = page.getByLabel('Choose a file')
  await chooser.setInputFiles({ name: 'seven.kml', mimeType: 'application/xml', buffer: Buffer.from(KML) })
  // 0.0003 degrees by 0.0002 at 53.7 N: 19.81 m by 22.26 m = 441 m2 (lengths of a degree 66,030.67 and 111,299.59 m at 53.71 N).
  await page.getByRole('button', { name: /Seven, 441/u }).click()
  await expect(page.locator('.figure', { hasText: 'Area' }).locator('.value')).toContainText('441')
  await chooser.setInputFiles({ name: 'x.txt', mimeType: 'text/plain', buffer: Buffer.from('hello') })
  await expect(page.getByText('Not read:')).toBeVisible()
})

test.describe('over plain http from another machine', () => {
  test('a walk says plainly that the phone will not tell its position', async ({ page, club }) => {
    await page.addInitScript(() => Object.defineProperty(globalThis, 'isSecureContext', { value: false }))
    await turnTo(page, club, '/green/g07/outline')
    await expect(page.getByText('only over https')).toBeVisible()
    await expect(page.getByRole('button', { name: 'Start walking' })).toHaveCount(0)
  })
})
