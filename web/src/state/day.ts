import { computed } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import { isoWithOffset, MINUTE_MS, type Replanned } from '@swardwright/engine'
import { dayFacts, finishedGreens, type DayKnown } from '../compute/day-facts.ts'
import type { DayAsk } from '../compute/day-now.ts'
import type { Work } from '../compute/work.ts'
import { nowMs } from './clock.ts'
import { computeLong } from './compute.ts'
import { course } from './course.ts'
import { facts } from './journal.ts'
import { latest } from './latest.ts'
import { draft, shownPlan } from './plan.ts'
import { record } from './record.ts'
import { weather } from './weather.ts'

/** What the journal is read against: the plan shown, at this minute. */
const dayKnown = computed((): DayKnown | null => {
  const [plan, known] = [shownPlan.value, course.value]
  if (plan === null || known === null) return null
  const minuteMs = Math.floor(nowMs.value / MINUTE_MS) * MINUTE_MS
  return {
    plan,
    course: known,
    settledAt: draft.value === null ? (facts.value.plan?.at ?? null) : null,
    nowMs: known.now === null ? minuteMs : nowMs.value,
  }
})

/** Greens of the plan shown that somebody finished by one tap: the entry that says so, by green. */
export const finishedToday = computed(
  (): ReadonlyMap<string, { readonly atMs: number; readonly entry: string }> =>
    new Map(
      dayKnown.value === null
        ? []
        : finishedGreens(facts.value, dayKnown.value).map(({ green, atMs, entry }) => [
            green,
            { atMs, entry },
          ]),
    ),
)

/** Whether the weather is younger than the plan in force. */
const hasNewForecast = computed((): boolean => {
  const settled = draft.value === null ? facts.value.plan : null
  const heard = [facts.value.forecast?.at, facts.value.typedRain.at(-1)?.at].flatMap((at) => at ?? [])
  return settled !== null && heard.some((at) => Date.parse(at) > Date.parse(settled.at))
})

/** What the day is worked out from, at this minute; null while there is no plan. */
export const dayAsk = computed((): DayAsk | null => {
  const known = dayKnown.value
  if (known === null) return null
  return {
    plan: known.plan,
    course: known.course,
    weather: weather.value,
    facts: dayFacts(facts.value, known),
    now: isoWithOffset(known.nowMs, known.course.timeZone),
    hasNewForecast: hasNewForecast.value,
  }
})

/** The day at this minute, worked out in the worker. */
export const day = latest<Work['day']['output']>()

/** Keeps the day worked out while a page shows it. */
export const useDay = (): void => {
  const ask = dayAsk.value
  const key = ask === null ? '' : JSON.stringify([ask.facts, ask.now, ask.hasNewForecast])
  useEffect(() => {
    if (ask === null) day.clear()
    else day.ask(() => computeLong('day', ask))
  }, [ask?.plan, ask?.course, ask?.weather, key])
}

/** The plan made again, where it was; null while nothing is known. */
export const again = computed((): Replanned | null => {
  const answer = day.value.value
  return answer !== null && answer.ok ? answer.value.again : null
})

/** Makes the plan made again the plan in force. */
export const settleAgain = async (): Promise<void> => {
  const made = again.value
  if (made === null) return
  await record('planSettled', { plan: made.plan })
  draft.value = null
}

/** The bail-out that was asked for last. */
export const bail = latest<Work['bailOut']['output']>()

/** Asks who finishes, clears or leaves what when it rains in so many minutes. */
export const askBailOut = (rainInMin: number): void => {
  const ask = dayAsk.value
  if (ask === null) return bail.clear()
  bail.ask(() => computeLong('bailOut', { day: ask, rainInMin }))
}
