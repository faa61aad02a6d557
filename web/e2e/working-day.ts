import type { Page } from '@playwright/test'
import { expect, turnTo, type Club } from './club.ts'
import { holdClock } from './journal.ts'

/** The board of a club with a settled plan, the clock held in the middle of its first morning. */
export const onWorkingDay = async (page: Page, club: Club, time: string): Promise<void> => {
  await holdClock(club.address(), `2026-08-10T${time}:00+01:00`)
  await turnTo(page, club, '/')
  await expect(page.getByText(/^(YES|NO)/u)).toBeVisible({ timeout: 60_000 })
}
