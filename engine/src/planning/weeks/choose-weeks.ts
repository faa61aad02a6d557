import { dayNumber } from '../../time/calendar.ts'
import type { WeekOutlook } from './outlook.ts'

/** A candidate with the week to fall back on. */
export type RankedWeek = {
  readonly week: WeekOutlook
  /** First day of the next candidate after the days wanted in which half the years or more meet no competition; null when none was reckoned. */
  readonly reserve: string | null
}

/** How many are put forward, and how far apart their first days are at least. */
const PICKS = 3
const APART_DAYS = 7

const byDate = (a: WeekOutlook, b: WeekOutlook): number => dayNumber(a.firstDay) - dayNumber(b.firstDay)

/** Most years finished in time without a clash; then most years finished in time; then soonest back (the median, not known last); then the earlier. */
const better = (a: WeekOutlook, b: WeekOutlook): number =>
  b.clearYears - a.clearYears ||
  b.finishedYears - a.finishedYears ||
  (a.daysUntilBack.median ?? Infinity) - (b.daysUntilBack.median ?? Infinity) ||
  byDate(a, b)

/** The candidates in order, best first, each with its reserve, and the three that are put forward: the first ones that begin a week or more apart. */
export const chooseWeeks = (
  weeks: readonly WeekOutlook[],
): { readonly ranked: readonly RankedWeek[]; readonly picks: readonly RankedWeek[] } => {
  const inTime = weeks.toSorted(byDate)
  const reserveOf = ({ lastDay }: WeekOutlook): string | null =>
    inTime.find(({ firstDay, freeYears, years }) => firstDay > lastDay && freeYears * 2 >= years.length)
      ?.firstDay ?? null
  const ranked = weeks.toSorted(better).map((week) => ({ week, reserve: reserveOf(week) }))
  const picks: RankedWeek[] = []
  for (const one of ranked) {
    const isApart = picks.every(({ week }) => Math.abs(byDate(week, one.week)) >= APART_DAYS)
    if (picks.length < PICKS && isApart) picks.push(one)
  }
  return { ranked, picks }
}
