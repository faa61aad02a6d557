import { addDays, dayNumber } from '../../time/calendar.ts'
import type { WeekInYear } from './week-in-year.ts'

/** What lies in the middle of the years, and what one year in ten stays under or goes over: the 10th, 50th and 90th in a hundred by rank. Null: later, or more, than can be said. */
export type OverYears<T> = { readonly low: T | null; readonly median: T | null; readonly high: T | null }

/** A competition that some years meet: in how many while work goes on, in how many while the greens heal. */
export type ClashYears = {
  readonly fixture: string
  readonly workYears: number
  readonly healingYears: number
}

/** What is to be said of one candidate: counts and ranges over the years, and the years themselves. */
export type WeekOutlook = {
  readonly firstDay: string
  /** Last of the days wanted. */
  readonly lastDay: string
  /** Years in which every green was finished by the last day. */
  readonly finishedYears: number
  /** Of those, years without a clash. */
  readonly clearYears: number
  /** Years that meet no competition, finished in time or not. */
  readonly freeYears: number
  readonly daysLost: OverYears<number>
  readonly shutGreenDays: OverYears<number>
  readonly backFrom: OverYears<string>
  readonly backBy: OverYears<string>
  /** Days from the first day to `backBy`. */
  readonly daysUntilBack: OverYears<number>
  readonly clashes: readonly ClashYears[]
  readonly growingDaysLeft: OverYears<number>
  readonly years: readonly WeekInYear[]
}

/** The value at a share of the ranked ones, the first whose rank is at least `share` of the count: the 1st, 5th and 9th of ten. Nulls rank last. */
const ranked = <T extends number | string>(values: readonly (T | null)[]): OverYears<T> => {
  const known = values.filter((value) => value !== null).toSorted((a, b) => (a < b ? -1 : a > b ? 1 : 0))
  const at = (tenths: number): T | null => known[Math.ceil((tenths * values.length) / 10) - 1] ?? null
  return { low: at(1), median: at(5), high: at(9) }
}

const clashYears = (years: readonly WeekInYear[]): readonly ClashYears[] => {
  const found = new Map<string, { workYears: number; healingYears: number }>()
  for (const { clashes } of years)
    for (const { fixture, when } of clashes) {
      const counts = found.get(fixture) ?? { workYears: 0, healingYears: 0 }
      counts[when === 'work' ? 'workYears' : 'healingYears']++
      found.set(fixture, counts)
    }
  return [...found].map(([fixture, counts]) => ({ fixture, ...counts }))
}

/** Adds up the years of one candidate. `days`: working days wanted. */
export const outlookOf = (firstDay: string, days: number, years: readonly WeekInYear[]): WeekOutlook => {
  const lastDay = addDays(firstDay, days - 1)
  const inTime = years.filter(({ finishedOn }) => finishedOn !== null && finishedOn <= lastDay)
  const isFree = ({ clashes }: WeekInYear): boolean => clashes.length === 0
  const since = (date: string | null): number | null =>
    date === null ? null : dayNumber(date) - dayNumber(firstDay)
  return {
    firstDay,
    lastDay,
    finishedYears: inTime.length,
    clearYears: inTime.filter(isFree).length,
    freeYears: years.filter(isFree).length,
    daysLost: ranked(years.map(({ daysLost }) => daysLost)),
    shutGreenDays: ranked(years.map(({ shutGreenDays }) => shutGreenDays)),
    backFrom: ranked(years.map(({ backFrom }) => backFrom)),
    backBy: ranked(years.map(({ backBy }) => backBy)),
    daysUntilBack: ranked(years.map(({ backBy }) => since(backBy))),
    clashes: clashYears(years),
    growingDaysLeft: ranked(years.map(({ growingDaysLeft }) => growingDaysLeft)),
    years,
  }
}
