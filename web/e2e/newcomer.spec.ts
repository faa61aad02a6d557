import type { Page } from '@playwright/test'
import { calculate } from '@swardwright/engine'
import { expect, test, turnTo, untilPlanned } from './club.ts'

/** The figure of that label on the page, as a number. */
const figure = async (page: Page, label: string): Promise<number> => {
  const text = await page.locator('.figure', { hasText: label }).locator('.value').first().innerText()
  return Number(/[\d.,]+/u.exec(text)?.[0]?.replaceAll(',', ''))
}

/** The fact of that word on the page, as a number. */
const fact = async (page: Page, word: string): Promise<number> =>
  Number.parseFloat(await page.locator('.facts > div', { hasText: word }).locator('dd').first().innerText())

const setField = async (page: Page, label: string, value: string, nth = 0): Promise<void> => {
  const field = page.getByLabel(label, { exact: true }).nth(nth)
  await field.fill(value)
  await field.blur()
}

/**
 * Green 1, made 500 m2, in the group 'usual' of the demo: holes 10 mm, cores 8 mm, 50 x 50 mm, blades 2 mm at 40 mm, 8 mm deep, twice
 * crossing, 1 mm on the surface, 35 % of the cores worked back, fill 0.85, loss 3 %, 1500 kg/m3, 5 % water, hopper 0.9 t.
 * By hand, 400 holes a m2: share 400 x 78.5398 mm2 = 3.14159 %, cores 400 x 50.2655 mm2 = 2.01062 %;
 * grooves 1 - 0.95^2 = 9.75 % x 8 mm = 0.78 L/m2.
 * 60 mm: holes 1.884956, cores 1.206372 L/m2; likely 0.85 x 1.884956 + 0.78 + 1 - 0.35 x 1.206372 = 2.959982 L/m2;
 *   x 1.03 x 1.5 kg/L x 500 m2 = 2.2866 t dry, x 1.05 = 2.4009 t wet, / 0.9 = 2.67: 3 loads.
 * 90 mm: holes 2.827433, cores 1.809557 L/m2; likely 2.403318 + 1.78 - 0.633345 = 3.549973 L/m2;
 *   2.7424 t dry, 2.8795 t wet, / 0.9 = 3.2: 4 loads.
 */
const BY_HAND = [
  { depthMm: 60, likelyT: 2.2866, loads: 3 },
  { depthMm: 90, likelyT: 2.7424, loads: 4 },
] as const

const sandByCatalogue = (depthMm: number): unknown => {
  const answer = calculate('sand.need', {
    areaM2: 500,
    hole: { holeDiameterMm: 10, coreDiameterMm: 8, acrossMm: 50, alongMm: 50, depthMm, passes: 1 },
    grooves: { bladeWidthMm: 2, bladeSpacingMm: 40, depthMm: 8, passes: 2, crossed: true },
    surfaceMm: 1,
    workedBackLPerM2: 0.35 * 400 * Math.PI * 16 * depthMm * 1e-6,
    fillFactor: 0.85,
    lossPercent: 3,
    bulkDensityKgPerM3: 1500,
    moisturePercentDryBasis: 5,
    hopperT: 0.9,
  })
  return answer.ok ? answer.value : answer.error
}

test('a newcomer looks at a green, deepens the coring, and sees sand, loads and trips change', async ({
  page,
  club,
}) => {
  const [before, after] = BY_HAND
  await turnTo(page, club, '/')
  await page.getByRole('link', { name: 'Course', exact: true }).click()
  await page
    .getByRole('link', { name: /Gatepost/u })
    .first()
    .click()
  await expect(page.locator('main > header h1')).toHaveText('1 Gatepost')
  await expect(page.locator('.section svg')).toHaveCount(2)
  // Before the work there is no hole; after it, two holes of 50 mm spacing in 100 mm.
  await expect(page.locator('.section svg').first().locator('[data-part=hole]')).toHaveCount(0)
  await expect(page.locator('.section svg').last().locator('[data-part=hole]')).toHaveCount(2)

  await setField(page, 'Area', '500')
  await expect.poll(() => figure(page, 'Sand, dry')).toBeCloseTo(before.likelyT, 1)
  expect(await fact(page, 'Dresser loads')).toBe(before.loads)
  expect(sandByCatalogue(before.depthMm)).toMatchObject({ loads: before.loads })

  await page.getByRole('link', { name: 'Prescription', exact: true }).click()
  await expect(page.locator('.figure', { hasText: 'Dresser loads' })).toBeVisible()
  const [tonnes, loads] = [await figure(page, 'Sand, dry'), await figure(page, 'Dresser loads')]
  const usual = page.locator('section', { has: page.getByRole('heading', { name: /All other greens/u }) })
  await usual
    .getByLabel('Depth', { exact: true })
    .first()
    .fill(String(after.depthMm / 25.4))
  await usual.getByLabel('Depth', { exact: true }).first().blur()
  await expect.poll(() => figure(page, 'Dresser loads')).toBeGreaterThan(loads)
  expect(await figure(page, 'Sand, dry')).toBeGreaterThan(tonnes)

  await page.getByRole('link', { name: 'Course', exact: true }).click()
  await page
    .getByRole('link', { name: /Gatepost/u })
    .first()
    .click()
  await expect.poll(() => fact(page, 'Dresser loads')).toBe(after.loads)
  expect(await figure(page, 'Sand, dry')).toBeCloseTo(after.likelyT, 1)
})

test('the panel behind a number says what calc run says', async ({ page, club }) => {
  await turnTo(page, club, '/green/g01')
  await setField(page, 'Area', '500')
  await expect.poll(() => fact(page, 'Dresser loads')).toBe(BY_HAND[0].loads)
  // The loads may be the same for the area that was there before: the sand is not.
  await expect.poll(() => figure(page, 'Sand, dry')).toBeCloseTo(BY_HAND[0].likelyT, 1)
  await page.locator('.figure', { hasText: 'Sand, dry' }).getByRole('button').click()
  const panel = page.getByRole('dialog', { name: 'Where does this number come from?' })
  await expect(panel.getByRole('heading', { name: 'Sand for a green' })).toBeVisible()
  const answer = sandByCatalogue(BY_HAND[0].depthMm)
  const outputs = Object.entries(typeof answer === 'object' && answer !== null ? answer : {}).filter(
    (entry): entry is [string, number] => typeof entry[1] === 'number',
  )
  expect(outputs.length).toBeGreaterThan(4)
  for (const [field, value] of outputs) {
    const shown = await panel.locator(`[data-field="${field}"] dd`).innerText()
    expect(Number.parseFloat(shown.replaceAll(',', ''))).toBeCloseTo(value, 4)
  }
  await page.keyboard.press('Escape')
  await expect(panel).toBeHidden()
})

test('rain two hours earlier: planned again, no green caught, and what moved is told', async ({
  page,
  club,
}) => {
  await turnTo(page, club, '/plan')
  await untilPlanned(page)
  await page.getByRole('button', { name: 'Settle this plan' }).click()
  await expect(page.locator('.over')).toHaveText('Settled')

  await page.getByLabel('Day', { exact: true }).selectOption('2026-08-11')
  await page.getByRole('button', { name: '2 h earlier' }).click()
  await expect(page.locator('.over')).toHaveText('Draft, not settled', { timeout: 90_000 })
  await expect(page.getByRole('heading', { name: 'What moved, and why' })).toBeVisible()
  // The demo's forecast rains from 15:00 (its value at 16:00 covers the hour before); two hours earlier is 13:00.
  await expect(page.getByText(/Rain now: Tue 11 Aug 13:00/u)).toBeVisible()
  await untilPlanned(page)
  const finished = await page
    .locator('section', { has: page.getByRole('heading', { name: 'Tuesday 11 Aug' }) })
    .last()
    .locator('td.number')
    .allInnerTexts()
  for (const time of finished) expect(time <= '13:00' || time === 'finished').toBe(true)
})

test('the day sheets print one page a post, with boxes to tick and the cautions', async ({ page, club }) => {
  await turnTo(page, club, '/sheets')
  const sheets = page.locator('.day-sheet')
  await expect(sheets).toHaveCount(6, { timeout: 90_000 })
  const first = sheets.first()
  await expect(first).toContainText('Monday 10 Aug')
  await expect(first.locator('.safe b')).toHaveText(/^\d\d:\d\d$/u)
  expect(await first.locator('.box').count()).toBeGreaterThan(3)
  await expect(first.locator('footer li').first()).toContainText('Follow')
  const pdf = await page.pdf({ preferCSSPageSize: true })
  // A page object of a PDF says `/Type /Page`; six posts are six pages.
  expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/gu)).toHaveLength(6)
  await page.emulateMedia({ media: 'print' })
  await expect(page.getByRole('navigation')).toBeHidden()
  await expect(page.getByRole('button', { name: 'Print' })).toBeHidden()
})
