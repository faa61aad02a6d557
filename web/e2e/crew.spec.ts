import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { uuidV7 } from '@swardwright/journal'
import { expect, test, turnTo, untilSent, type Club } from './club.ts'

/** Holds the course's clock at a moment of the working week, as the settings page does. */
const holdClock = async (page: Page, club: Club, now: string): Promise<void> => {
  const courses: unknown = await (await page.request.get(`${club.address()}/api/courses`)).json()
  const course = Array.isArray(courses) ? String(courses[0].id) : ''
  const at = new Date().toISOString()
  const entry = {
    id: uuidV7({ nowMs: Date.now(), random: crypto.getRandomValues(new Uint8Array(10)) }),
    course,
    device: 'clock',
    author: 'Course manager',
    at,
    recordedAt: at,
    kind: 'courseChanged',
    version: 2,
    body: { changes: [{ part: 'facts', do: 'set', fields: { now } }] },
  }
  const answer = await page.request.post(`${club.address()}/api/courses/${course}/entries`, {
    data: { entries: [entry] },
  })
  expect(await answer.json()).toMatchObject({ refused: [] })
}

/** A settled plan, and the clock held in the middle of its first morning. */
const onWorkingDay = async (page: Page, club: Club, time: string): Promise<void> => {
  await turnTo(page, club, '/plan')
  await expect(page.getByText('The checker finds nothing wrong')).toBeVisible({ timeout: 90_000 })
  await page.getByRole('button', { name: 'Settle this plan' }).click()
  await untilSent(page)
  await holdClock(page, club, `2026-08-10T${time}:00+01:00`)
  await turnTo(page, club, '/')
  await expect(page.getByText(/^(YES|NO)/u)).toBeVisible({ timeout: 60_000 })
}

const readsWell = async (page: Page): Promise<void> => {
  const { violations } = await new AxeBuilder({ page }).analyze()
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([])
  const over = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  )
  expect(over).toBe(0)
}

/** Height in px of each button of the page that shows. */
const buttonHeights = (page: Page): Promise<readonly number[]> =>
  page
    .locator('main button:visible')
    .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().height))

test('a problem on the crew’s phone reaches the board, the day is made again there, and the phone tells what changed', async ({
  page,
  club,
  browser,
}) => {
  test.setTimeout(240_000)
  await onWorkingDay(page, club, '08:30')
  await readsWell(page)

  const phone = await (await browser.newContext({ viewport: { width: 360, height: 740 } })).newPage()
  await turnTo(phone, club, '/crew')
  await phone.getByRole('button', { name: 'Maren' }).click()
  await expect(phone.getByRole('heading', { name: 'Before you begin' })).toBeVisible()
  await readsWell(phone)
  await phone.getByRole('button', { name: 'I have read it' }).click()
  await expect(phone.getByText('Set the machine')).toBeVisible()
  await readsWell(phone)
  expect(Math.min(...(await buttonHeights(phone)))).toBeGreaterThanOrEqual(56)

  // One tap, and back.
  const bigTap = phone.locator('.thumb button.primary')
  const first = (await bigTap.textContent()) ?? ''
  await bigTap.click()
  await expect(bigTap).not.toHaveText(first)
  await phone.getByRole('button', { name: 'Undo' }).click()
  await expect(bigTap).toHaveText(first)

  await phone.getByRole('button', { name: 'Problem' }).click()
  await phone.getByRole('button', { name: 'A machine is out' }).click()
  await phone.getByRole('button', { name: 'Corer', exact: true }).click()
  await expect(phone.getByText(/told to the manager/u)).toBeVisible()

  await expect(page.getByText('Corer out')).toBeVisible()
  await expect(page.getByRole('heading', { name: 'The day has moved' })).toBeVisible({ timeout: 60_000 })
  await expect(page.getByRole('region', { name: 'The day has moved' })).toContainText(
    'because a machine is out',
  )
  await readsWell(page)
  await page.getByRole('button', { name: 'Make this the plan' }).click()
  await expect(page.getByRole('heading', { name: 'The day has moved' })).toHaveCount(0, { timeout: 60_000 })
  await expect(phone.getByRole('heading', { name: 'The plan has changed' })).toBeVisible({ timeout: 60_000 })
  await readsWell(phone)
  await phone.getByRole('button', { name: 'Seen' }).click()
  await expect(phone.getByRole('heading', { name: 'The plan has changed' })).toHaveCount(0)
  await phone.context().close()
})
