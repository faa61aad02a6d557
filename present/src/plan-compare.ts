import type { Plan } from '@swardwright/engine'
import { decimal } from './numbers.ts'
import { dayAndClock, durationWords, minutesBetween } from './times.ts'

/** One thing by which plans are judged, of two plans side by side. */
export type ComparedRow = {
  readonly what: string
  readonly before: string
  readonly now: string
  /** Whether the newer plan is better, worse or the same in it. */
  readonly change: 'better' | 'worse' | 'same'
}

const row = (
  what: string,
  [before, now]: readonly [number, number],
  words: (value: number) => string,
): ComparedRow => ({
  what,
  before: words(before),
  now: words(now),
  change: now === before ? 'same' : now < before ? 'better' : 'worse',
})

const finishRow = (before: Plan, now: Plan, timeZone: string): ComparedRow => {
  const [was, is] = [before.objective.finish, now.objective.finish]
  const words = (finish: string | null): string =>
    finish === null ? 'nothing finished' : dayAndClock(finish, timeZone)
  const later = was === null || is === null ? 0 : minutesBetween(was, is)
  return {
    what: 'last finish',
    before: words(was),
    now: words(is),
    change: later === 0 ? 'same' : later < 0 ? 'better' : 'worse',
  }
}

/** Two plans side by side, by what plans are judged by and in that order. */
export const comparePlans = (before: Plan, now: Plan, timeZone: string): readonly ComparedRow[] => {
  const pair = (key: 'unfinishedGreens' | 'fixtureClashes' | 'shutGreenDays' | 'overtimeMin' | 'travelMin') =>
    [before.objective[key], now.objective[key]] as const
  const plain = (value: number): string => decimal(value, 0)
  return [
    row('greens left out', pair('unfinishedGreens'), plain),
    row('clashes with fixtures', pair('fixtureClashes'), plain),
    row('shut green-days', pair('shutGreenDays'), plain),
    finishRow(before, now, timeZone),
    row('overtime', pair('overtimeMin'), durationWords),
    row('driving between places', pair('travelMin'), durationWords),
  ]
}
