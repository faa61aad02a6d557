import type { Page } from '@playwright/test'
import type { Entry } from '@swardwright/journal'
import type { timed } from './fold-page.ts'
import { bundled, inFreshPage, throttle } from './fresh-page.ts'
import { median } from './median.ts'

const PAGES = 9
const WARM_ROUNDS = 5

/** How long something takes in a browser, ms on the wall. */
export type InBrowser = {
  /** The first time in a page, of each page. */
  readonly coldMs: readonly number[]
  /** Median of `coldMs`. */
  readonly medianColdMs: number
  /** Median of all rounds after the first. */
  readonly medianWarmMs: number
}

type Rounds = { readonly coldMs: number; readonly warmMs: readonly number[] }

const roundsIn = async (page: Page, work: keyof typeof timed): Promise<Rounds> => {
  const round = (): Promise<number> => page.evaluate<number>(`bench.timed.${work}()`)
  const coldMs = await round()
  const warmMs: number[] = []
  for (let done = 0; done < WARM_ROUNDS; done += 1) warmMs.push(await round())
  return { coldMs, warmMs }
}

const summed = (pages: readonly Rounds[]): InBrowser => {
  const coldMs = pages.map((page) => page.coldMs)
  return {
    coldMs,
    medianColdMs: median(coldMs),
    medianWarmMs: median(pages.flatMap((page) => page.warmMs)),
  }
}

/**
 * The fold and the plain reduce in Chromium's main thread, slowed down `rate` times, each the first time in a page that has run none of
 * its code yet (over 9 pages, turn about) and then warm. Making the entries is neither timed nor slowed down.
 */
export const measureFoldInBrowser = async (
  entries: readonly Entry[],
  rate: number,
): Promise<Readonly<Record<keyof typeof timed, InBrowser>>> => {
  const script = await bundled('fold-page.ts')
  const diary = JSON.stringify(entries)
  const pageOf = (work: keyof typeof timed): Promise<Rounds> =>
    inFreshPage(script, async (page) => {
      await page.evaluate(`bench.take(${JSON.stringify(diary)})`)
      await throttle(page, rate)
      return roundsIn(page, work)
    })
  const folds: Rounds[] = []
  const reduces: Rounds[] = []
  for (let page = 0; page < PAGES; page += 1) {
    folds.push(await pageOf('fold'))
    reduces.push(await pageOf('plainReduce'))
  }
  return { fold: summed(folds), plainReduce: summed(reduces) }
}
