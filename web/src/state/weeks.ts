import { computed, signal } from '@preact/signals'
import {
  addDays,
  chooseWeeks,
  DEFAULT_WEEKS,
  firstDaysBetween,
  mondayAfter,
  OVERRUN_DAYS,
  type WeekOutlook,
} from '@swardwright/engine'
import type { Work } from '../compute/work.ts'
import { today } from './clock.ts'
import { engineToStop } from './compute.ts'
import { course } from './course.ts'
import { planChoices, planInput, planning, planNow } from './plan.ts'
import { prescription } from './prescription.ts'
import { askHistory, history } from './served-weather.ts'

const { weeks, days, years, everyDays, seed } = DEFAULT_WEEKS

/** Which weeks are weighed, kept while the app is open; a beginning of null is the Monday after today. */
export const weeksChoices = signal({ from: null as string | null, weeks, everyDays, days, years })

/** First candidate unless somebody chooses. */
const usualFrom = computed(() => mondayAfter(today.value))

type Question = Work['weeks']['input']

/** What is asked of now; null while there is no course or nothing is prescribed. */
export const weeksQuestion = computed((): Question | null => {
  const [known, prescribed] = [course.value, prescription.value]
  if (known === null || prescribed === null) return null
  const wanted = weeksChoices.value
  const first = wanted.from ?? usualFrom.value
  return {
    course: known,
    prescription: prescribed,
    history: history.value ?? null,
    firstDays: firstDaysBetween(first, addDays(first, wanted.weeks * 7 - 1), wanted.everyDays),
    days: wanted.days,
    years: wanted.years,
    seed,
  }
})

/** What there is to show. A reckoning that was stopped shows the weeks that it had come to. */
export type Reckoned = {
  readonly to: Question
  readonly weeks: readonly WeekOutlook[]
  /** How many are done of how many; null once all are, or it was stopped. */
  readonly running: { readonly done: number; readonly of: number } | null
  readonly outcome: Work['weeks']['output'] | null
  /** A fault of the program, in its own words. */
  readonly fault: string | null
}

/** The weeks reckoned last; null before anybody asked. */
export const reckoned = signal<Reckoned | null>(null)

/** The record is fetched anew at each visit: it is the same as long as the server received it when it did. */
const isSame = (a: Question, b: Question): boolean =>
  a.course === b.course &&
  a.prescription === b.prescription &&
  a.history?.receivedAt === b.history?.receivedAt &&
  a.firstDays.join() === b.firstDays.join() &&
  a.days === b.days &&
  a.years === b.years

/** True when something has changed that they hang on. */
export const isOldReckoning = computed(() => {
  const [told, now] = [reckoned.value, weeksQuestion.value]
  return told !== null && now !== null && !isSame(told.to, now)
})

/** They in order, and those put forward. */
export const chosenWeeks = computed(() => chooseWeeks(reckoned.value?.weeks ?? []))

let stopEngine: (() => void) | null = null

const change = (more: Partial<Reckoned>): void => {
  if (reckoned.value !== null) reckoned.value = { ...reckoned.value, ...more }
}

/** Stops the reckoning; what it had come to stays. */
export const stopWeeks = (): void => {
  stopEngine?.()
  stopEngine = null
  change({ running: null })
}

const byFirstDay = (a: WeekOutlook, b: WeekOutlook): number => (a.firstDay < b.firstDay ? -1 : 1)

/** Reckons the weeks anew, in an engine of its own, so that neither plans nor figures wait for it. */
export const reckonWeeksNow = async (): Promise<void> => {
  const to = weeksQuestion.value
  if (to === null) return
  stopEngine?.()
  const { ask, stop } = engineToStop('weeks')
  stopEngine = stop
  const running = { done: 0, of: to.firstDays.length }
  reckoned.value = { to, weeks: [], running, outcome: null, fault: null }
  try {
    const outcome = await ask('weeks', to, ({ week, done, of }) => {
      const known = reckoned.value?.weeks ?? []
      change({ weeks: [...known, week].toSorted(byFirstDay), running: { done, of } })
    })
    change({ outcome })
  } catch (error) {
    change({ fault: error instanceof Error ? error.message : String(error) })
  }
  stopWeeks()
}

/** Reckons the weeks when the page is first opened, by the record of the course if the server has one. */
export const openWeeks = async (): Promise<void> => {
  await askHistory()
  if (reckoned.value === null) await reckonWeeksNow()
}

/** Resolves once no plan is being made. */
const untilPlanned = (): Promise<void> =>
  new Promise((resolve) => {
    const unfollow = planning.subscribe((now) => {
      if (now !== null) return
      resolve()
      // Told at once while it subscribes, before there is anything to leave.
      queueMicrotask(() => unfollow())
    })
  })

/** Takes a week: the plan begins on its first day, has room to run over, and is made. Pins are for days of another week, so they do not go with it. */
export const takeWeek = async (firstDay: string): Promise<void> => {
  const wanted = reckoned.value?.to.days ?? days
  planChoices.value = { ...planChoices.value, start: firstDay, days: wanted + OVERRUN_DAYS }
  await untilPlanned()
  const input = planInput.value
  await planNow(input === null ? null : { ...input, pins: [] })
}
