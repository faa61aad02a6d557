import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { uuidV7 } from '@swardwright/journal'
import { expect, turnTo, untilSent, type Club } from './club.ts'

/** Holds the course's clock at a moment of the working week, as the settings page does. */
export const holdClock = async (page: Page, club: Club, now: string): Promise<void> => {
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
export const onWorkingDay = async (page: Page, club: Club, time: string): Promise<void> => {
  await turnTo(page, club, '/plan')
  await expect(page.getByText('The checker finds nothing wrong')).toBeVisible({ timeout: 90_000 })
  await page.getByRole('button', { name: 'Settle this plan' }).click()
  await untilSent(page)
  await holdClock(page, club, `2026-08-10T${time}:00+01:00`)
  await turnTo(page, club, '/')
  await expect(page.getByText(/^(YES|NO)/u)).toBeVisible({ timeout: 60_000 })
}

/** Nothing for the accessibility rules to object to, and nothing runs over the edge. */
export const readsWell = async (page: Page): Promise<void> => {
  const { violations } = await new AxeBuilder({ page }).analyze()
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([])
  const over = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  )
  expect(over).toBe(0)
}
