import type { Page } from '@playwright/test'
import { expect, test, turnTo, type Club } from './club.ts'
import { entriesOn, holdClock } from './journal.ts'
import { readsWell } from './readable.ts'
import { onWorkingDay } from './working-day.ts'

test.use({ begins: 'settled' })

const pictures = process.env['PICTURES']

/** A picture of the page for whoever wants to look at it. */
const picture = async (page: Page, name: string): Promise<void> => {
  if (pictures !== undefined) await page.screenshot({ path: `${pictures}/${name}.png`, fullPage: true })
}

/** The board of a working day, in one hand. */
const inOneHand = async (page: Page, club: Club, time: string): Promise<void> => {
  await onWorkingDay(page, club, time)
  await page.setViewportSize({ width: 390, height: 844 })
}

test('rain begins, and the board in one hand says so, holds back the next green, and takes it back', async ({
  page,
  club,
}) => {
  await inOneHand(page, club, '08:30')
  await picture(page, 'board')
  await page.getByRole('button', { name: 'Rain now' }).click()
  await expect(page.getByText(/^NO/u)).toContainText('it rains')
  await expect(page.locator('.dry-till')).toContainText('it rains')
  await picture(page, 'rain')
  await readsWell(page)
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect(page.getByText(/^YES/u)).toBeVisible()
  await expect(page.locator('.dry-till')).not.toContainText('it rains')
})

test('with rain in forty minutes every open green has its word, and everybody a place to go', async ({
  page,
  club,
}) => {
  await inOneHand(page, club, '10:30')
  const open = await page.locator('.rows .state').count()
  expect(open).toBeGreaterThan(0)
  await page.getByRole('button', { name: 'Bail-out' }).click()
  await page.getByRole('button', { name: '40 min' }).click()
  const told = page.getByRole('dialog')
  await expect(told.getByText('Rain at 11:10')).toBeVisible({ timeout: 60_000 })
  await picture(page, 'bail-out')
  await expect(told.locator('.strike')).toHaveCount(open)
  for (const word of await told.locator('.strike').allTextContents())
    expect(word).toMatch(/^(FINISH|FINISH SHORT|CLEAR ONLY|CLEAR WHAT YOU CAN|LEAVE)$/u)
  await expect(told.locator('ol li').first()).toContainText(/^\d\d:\d\d /u)
  await readsWell(page)
})

test('a paper sheet is typed in the evening: a wrong time is told at its line, the rest is kept', async ({
  page,
  club,
}) => {
  await inOneHand(page, club, '08:30')
  await holdClock(club.address(), '2026-08-10T19:00:00+01:00')
  await turnTo(page, club, '/paper')
  const times = page.getByRole('textbox', { name: /, finished at$/u })
  await times.nth(0).fill('25:10')
  await expect(page.locator('.paper-line').first().locator('.wrong')).toBeVisible()
  await picture(page, 'paper-wrong')
  await expect(page.getByRole('button', { name: 'Write it down' })).toBeDisabled()
  await times.nth(0).fill('11:40')
  await times.nth(1).fill('12:05')
  await readsWell(page)
  await page.getByRole('button', { name: 'Write it down' }).click()
  await expect(page.getByText('2 lines')).toBeVisible()
  await expect(page.locator('.paper-line').nth(0)).toContainText('11:40')
  await expect(page.locator('.paper-line').nth(1)).toContainText('12:05')
  await picture(page, 'paper')
})

test('a step broken off is typed in from the paper: what is missing is told, what is typed stays, one press takes it back', async ({
  page,
  club,
}) => {
  await page.setViewportSize({ width: 390, height: 844 })
  await holdClock(club.address(), '2026-08-10T19:00:00+01:00')
  await turnTo(page, club, '/paper')
  const keep = page.getByRole('button', { name: 'Write it down' })
  const stops = page.locator('.paper-stop')
  const stop = stops.first()
  const [step, time, why] = [
    stop.getByLabel('Step'),
    stop.getByLabel('Broken off at'),
    stop.getByLabel('Why'),
  ]
  await step.selectOption({ index: 2 })
  const name = await step.locator('option').nth(2).innerText()
  const [green = '', todo = ''] = name.split(': ')
  await expect(stop.locator('.wrong')).toHaveText('Type when it was broken off, such as 10:40')
  await time.fill('25:10')
  await expect(stop.locator('.wrong')).toHaveText('A time from 00:00 to 23:59, such as 10:40')
  await time.fill('10:20')
  await expect(stop.locator('.wrong')).toHaveText('Pick why it was broken off')
  await expect(keep).toBeDisabled()
  const finished = page.getByRole('textbox', { name: `${green}, finished at`, exact: true })
  await finished.fill('10:15')
  await why.selectOption('Rain')
  await expect(stop.locator('.wrong')).toHaveText('The green was finished before that time')
  await finished.fill('')
  await stop.getByLabel('In words').fill('cloudburst')
  await readsWell(page)
  await picture(page, 'paper-broken-off')
  for (const field of await stop.locator('input, select').all())
    expect((await field.boundingBox())?.height).toBeGreaterThanOrEqual(48)
  // Another page, loaded anew, and back: it stands there still.
  await turnTo(page, club, '/more')
  await turnTo(page, club, '/paper')
  await expect(time).toHaveValue('10:20')
  await expect(why).toHaveValue('rain')
  await keep.click()
  await expect(page.getByText('1 line written down.')).toBeVisible()
  await expect(time).toHaveValue('')
  const line = page.locator('.paper-line').filter({ hasText: green })
  await expect(line).toContainText(`broken off 10:20: ${todo}`)
  await picture(page, 'paper-written')
  const stopped = async () => (await entriesOn(club.address())).filter(({ kind }) => kind === 'taskStopped')
  await expect.poll(stopped).toMatchObject([
    {
      at: expect.stringMatching(/^2026-08-10T09:20:00(\.000)?Z/u),
      body: { why: 'rain', words: 'cloudburst' },
    },
  ])
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect(line).not.toContainText('broken off')
  await expect(time).toHaveValue('10:20')
})
