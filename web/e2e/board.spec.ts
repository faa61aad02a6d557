import type { Page } from '@playwright/test'
import { expect, test, turnTo, untilPlanned, type Club } from './club.ts'

test.use({ begins: 'settled' })

/** Opens the plan page and waits for a plan that the checker accepts. */
const withPlan = async (page: Page, club: Club): Promise<void> => {
  await turnTo(page, club, '/plan')
  await untilPlanned(page)
}

const panel = (page: Page) => page.getByRole('region', { name: 'Why here' })

test('a task on the board says why it is there, and its green can be moved and pinned by keyboard alone', async ({
  page,
  club,
}) => {
  await withPlan(page, club)
  const core = page.getByRole('button', { name: /^core / }).first()
  await core.focus()
  await page.keyboard.press('Enter')
  await expect(panel(page)).toContainText(/no earlier because of|later than it must/u)
  await panel(page).getByRole('button', { name: '15 min later' }).focus()
  await page.keyboard.press('Enter')
  await expect(panel(page)).toContainText('Pinned to', { timeout: 60_000 })
  await expect(page.getByText('Draft, not settled')).toBeVisible()
  await expect(page.getByText('The checker finds nothing wrong')).toBeVisible()
  // The pin stands when the week is planned anew.
  const pinned = (await panel(page).getByText('Pinned to').textContent()) ?? ''
  await page.getByRole('button', { name: 'Plan again' }).first().click()
  await expect(page.getByRole('progressbar')).toHaveCount(0, { timeout: 120_000 })
  await page
    .getByRole('button', { name: /^core / })
    .first()
    .click()
  const clock = /\d\d:\d\d/u.exec(pinned)?.[0] ?? 'no time'
  await expect(page.getByText(clock).first()).toBeVisible()
  await expect(page.getByText('The checker finds nothing wrong')).toBeVisible()
})

test('a green pinned into the rain stands there, and the board says what that risks', async ({
  page,
  club,
}) => {
  await withPlan(page, club)
  await page
    .getByRole('button', { name: /^core / })
    .last()
    .click()
  await panel(page).getByText('Another day or hour').click()
  // The demo's forecast has rain on Tuesday from 15:00.
  await panel(page).getByLabel('Day').selectOption('2026-08-11')
  await panel(page).getByLabel('Opened at').fill('13:30')
  await panel(page).getByRole('button', { name: 'Open it then' }).click()
  await expect(panel(page)).toContainText('It stands as you pinned it. The risk:', { timeout: 60_000 })
  await expect(panel(page)).toContainText(/stands open in rain on Tue 11 Aug at 15:00/u)
  await expect(panel(page)).toContainText('Pinned to Tue 11 Aug, 13:30')
  await expect(page.getByText('As you pinned it:')).toBeVisible()
  await expect(page.getByText('Nothing else is wrong with this plan')).toBeVisible()
})

test('the evening before tells the day’s chance of a caught green, and leads to the chances of all days with their curves', async ({
  page,
  club,
}) => {
  await turnTo(page, club, '/')
  const reason = page.locator('.reasons > li', { hasText: 'Chance of a caught green' })
  await expect(reason).toHaveText(/^Chance of a caught green [a-z ]*\d+ %, (within|over) the level of 5 %/u, {
    timeout: 120_000,
  })
  await reason.getByRole('link', { name: 'The chances' }).click()
  await expect(page.locator('details#chances > summary')).toBeInViewport()
  await expect(page.getByText(/the chance that one is caught is/u).first()).toBeVisible({ timeout: 120_000 })
  await page
    .getByRole('button', { name: /^Chance by the hour/u })
    .first()
    .click()
  await expect(page.getByRole('group', { name: /^Chance of a caught green/u })).toBeVisible()
})
