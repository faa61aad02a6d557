import type { Page } from '@playwright/test'

/** What a person should wait at most for the picture to change after a press, ms. */
export const LATENCY_GOAL_MS = 100

/** Browsers tell of no event that took less, ms; such a one counts as this. */
const LEAST_TOLD_MS = 16

/** Long enough for the picture to have changed and for the browser to have told of it. */
const SETTLE_MS = 700

/** How a page answered one press. */
export type Response = {
  /** From the press to the next picture, the longest of its events, ms (told in steps of 8). */
  readonly eventMs: number
  /** The longest stretch in which the page could not have answered another, ms; 0 where none was over 50. */
  readonly blockMs: number
}

/** Has every page that opens keep what the browser tells of events (Event Timing) and of long tasks. */
export const observeEvents = async (page: Page): Promise<void> => {
  await page.addInitScript(`
    window.latencyEvents = []
    window.latencyBlocks = []
    new PerformanceObserver((list) => {
      for (const { duration, interactionId } of list.getEntries())
        if (interactionId > 0) window.latencyEvents.push(duration)
    }).observe({ type: 'event', durationThreshold: ${LEAST_TOLD_MS} })
    new PerformanceObserver((list) => {
      for (const { duration } of list.getEntries()) window.latencyBlocks.push(duration)
    }).observe({ type: 'longtask' })
  `)
}

/** Does it, and tells how the page answered. */
export const responseOf = async (page: Page, act: () => Promise<void>): Promise<Response> => {
  await page.evaluate('latencyEvents.length = 0; latencyBlocks.length = 0')
  await act()
  await page.waitForTimeout(SETTLE_MS)
  return page.evaluate<Response>(
    `({ eventMs: Math.max(${LEAST_TOLD_MS}, ...latencyEvents), blockMs: Math.max(0, ...latencyBlocks) })`,
  )
}
