import { computed, signal } from '@preact/signals'
import { addDays, DEFAULT_SCHEDULES, localOf, type Plan, type PlanError } from '@swardwright/engine'
import type { BodyOf } from '@swardwright/journal'
import type { Work } from '../compute/work.ts'
import { spellsOf, type Spell } from '../compute/typed-rain.ts'
import { computeLong } from './compute.ts'
import { course } from './course.ts'
import { nowMs } from './clock.ts'
import { facts } from './journal.ts'
import { latest } from './latest.ts'
import { prescription } from './prescription.ts'
import { record } from './record.ts'
import { weather } from './weather.ts'

/** A plan with the rain that it was made for. */
export type PlannedFor = { readonly plan: Plan; readonly rain: readonly Spell[] }

/** How to plan: all but the first day has a usual value. */
export type PlanChoices = {
  readonly start: string | null
  readonly days: number
  readonly seed: number
  readonly schedules: number
}

/** The person’s choices; a start of null is the next working morning. */
export const planChoices = signal<PlanChoices>({
  start: null,
  days: 7,
  seed: 1,
  schedules: DEFAULT_SCHEDULES,
})

/** The plan that was settled; null until one is. */
export const settledPlan = computed(() => facts.value.plan?.value ?? null)

/** A plan made on this device and not settled. It outlives the page, so that nobody waits for it twice. */
export const draft = signal<PlannedFor | null>(null)

/** The plan shown before the draft was made, to tell what moved. */
export const planBefore = signal<PlannedFor | null>(null)

/** How far the planning is; null while nothing is being planned. */
export const planning = signal<Work['plan']['progress'] | null>(null)

/** Why no plan came of it. */
export const planFailure = signal<PlanError | null>(null)

/** A fault of the program while planning, in its own words; null while all is well. */
export const planFault = signal<string | null>(null)

/** The plan that pages show: the draft, else the settled one. */
export const shownPlan = computed(() => draft.value?.plan ?? settledPlan.value)

/** A planned day begins in the morning: after this hour the next one is tomorrow. */
const NOON_MIN = 12 * 60

/** First day of work unless somebody chooses: today before noon, else tomorrow, and not before the forecast begins. */
export const usualStart = computed(() => {
  const timeZone = course.value?.timeZone ?? 'UTC'
  const now = localOf(nowMs.value, timeZone)
  const next = now.minuteOfDay < NOON_MIN ? now.date : addDays(now.date, 1)
  const hours = weather.value
  const first = hours === null ? next : localOf(hours.startMs, timeZone).date
  return first > next ? first : next
})

/** Rain in the days that a plan is made for. */
export const rainAhead = computed((): readonly Spell[] => {
  const [hours, known] = [weather.value, course.value]
  if (hours === null || known === null) return []
  const from = planChoices.value.start ?? usualStart.value
  return spellsOf(hours, { from, to: addDays(from, planChoices.value.days - 1) }, known.timeZone).filter(
    (spell) => spell.mmPerH >= known.settings.rainStopMmPerH,
  )
})

/** What the next plan is made from; null while there is no course or nothing is prescribed. */
export const planInput = computed((): Work['plan']['input'] | null => {
  const [known, prescribed] = [course.value, prescription.value]
  if (known === null || prescribed === null) return null
  const { start, ...choices } = planChoices.value
  return {
    course: known,
    prescription: prescribed,
    weather: weather.value,
    start: start ?? usualStart.value,
    ...choices,
    pins: shownPlan.value?.pins ?? [],
  }
})

/** Takes a plan as the draft; the plan shown until now is kept, to tell what moved. */
export const takeDraft = (plan: Plan, rain: readonly Spell[]): void => {
  const settled = settledPlan.value
  planBefore.value = draft.value ?? (settled === null ? null : { plan: settled, rain: [] })
  draft.value = { plan, rain }
}

/** Plans, in the worker; the plan becomes the draft. */
export const planNow = async (input = planInput.value): Promise<void> => {
  if (input === null || planning.value !== null) return
  const rain = rainAhead.value
  planning.value = { schedules: 0, of: planChoices.value.schedules, unfinished: 0 }
  try {
    const made = await computeLong('plan', input, (progress) => {
      planning.value = progress
    })
    planFailure.value = made.ok ? null : made.error
    planFault.value = null
    if (made.ok) takeDraft(made.value, rain)
  } catch (error) {
    planFault.value = error instanceof Error ? error.message : String(error)
  } finally {
    planning.value = null
  }
}

/** Writes the draft down as the plan in force. */
export const settlePlan = async (): Promise<void> => {
  const made = draft.value
  if (made === null) return
  await record('planSettled', { plan: made.plan } satisfies BodyOf<'planSettled'>)
  draft.value = null
}

/** What the checker says of the plan shown, against the course and the weather of now. */
export const verdict = latest<Work['check']['output']>()

/** Has the plan shown checked. */
export const checkShown = (): void => {
  const [plan, known] = [shownPlan.value, course.value]
  if (plan === null || known === null) return verdict.clear()
  const hours = weather.value
  verdict.ask(() => computeLong('check', { plan, course: known, weather: hours }))
}
