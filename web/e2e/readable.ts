import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { expect } from './club.ts'

/**
 * What the accessibility rules object to on the page, each with the first element that it fell on. Every rule looks at the whole page; only
 * what it finds in order is not described one by one, which on a board of thousands of parts takes longer than the rules themselves. The
 * builder's usual mode, made for frames of other sites, describes all of it whatever it is asked for; no page of ours has such a frame.
 */
export const faultsOf = async (page: Page): Promise<readonly string[]> => {
  const { violations } = await new AxeBuilder({ page })
    .setLegacyMode()
    .options({ resultTypes: ['violations'] })
    .analyze()
  return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)
}

/** By how much the page runs over the edge of the screen, px. */
export const overEdgePx = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)

/** Nothing for the accessibility rules to object to, and nothing runs over the edge. */
export const readsWell = async (page: Page): Promise<void> => {
  expect(await faultsOf(page), page.url()).toEqual([])
  expect(await overEdgePx(page), page.url()).toBe(0)
}
