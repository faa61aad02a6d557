import { signal } from '@preact/signals'
import { isoWithOffset, type Plan, type PlanPin } from '@swardwright/engine'
import { changeSentence, planErrorWords, situationErrorWords } from '@swardwright/present'
import type { Work } from '../compute/work.ts'
import { nowMs } from './clock.ts'
import { compute, computeLong } from './compute.ts'
import { course } from './course.ts'
import { latest } from './latest.ts'
import { rainAhead, shownPlan, takeDraft } from './plan.ts'
import { weather } from './weather.ts'

/** Why the task that was pressed is where it is. */
export const why = latest<Work['why']['output']>()

/** Asks why a task is where it is. */
export const askWhy = (plan: Plan, task: string): void => {
  const known = course.value
  if (known === null) return why.clear()
  const hours = weather.value
  why.ask(() => compute('why', { plan, course: known, weather: hours, task }))
}

/** A green is being moved. */
export const pinning = signal(false)

/** Why the green could not be moved, or not quite; null while all is well. */
export const pinFault = signal<string | null>(null)

/** Where the manager pinned a green; null where it is free. */
export const pinOf = (plan: Plan, green: string): PlanPin | null =>
  plan.pins?.find((pin) => pin.green === green) ?? null

const withPin = (plan: Plan, pin: PlanPin): Plan => ({
  ...plan,
  pins: [...(plan.pins ?? []).filter(({ green }) => green !== pin.green), pin],
})

/** Opens a green where the manager wants it and moves the others as little as may be. The plan becomes a draft with the pin in it. */
export const pinGreen = async (green: string, date: string, opens: string | null): Promise<void> => {
  const [plan, known] = [shownPlan.value, course.value]
  if (plan === null || known === null || pinning.value) return
  const rain = rainAhead.value
  const now = isoWithOffset(nowMs.value, known.timeZone)
  pinning.value = true
  pinFault.value = null
  try {
    const made = await computeLong('replan', {
      plan,
      course: known,
      weather: weather.value,
      facts: [
        ...(plan.pins ?? []).filter((pin) => pin.green !== green).map((pin) => factOf(pin)),
        factOf({ green, date, opens }),
      ],
      now,
      hasNewForecast: false,
    })
    if (!made.ok) {
      const { error } = made
      pinFault.value =
        error.type === 'badFact' || error.type === 'badNow'
          ? situationErrorWords(error)
          : planErrorWords(error)
      return
    }
    const missed = made.value.changes.find((change) => change.kind === 'pinNotKept' && change.green === green)
    if (missed !== undefined) pinFault.value = changeSentence(missed, known)
    else takeDraft(withPin(made.value.plan, { green, date, opens }), rain)
  } catch (error) {
    pinFault.value = error instanceof Error ? error.message : String(error)
  } finally {
    pinning.value = false
  }
}

const factOf = ({ green, date, opens }: PlanPin) =>
  opens === null
    ? ({ kind: 'pinned', green, date } as const)
    : ({ kind: 'pinned', green, at: opens } as const)

/** Lets a green go where the next planning puts it. Nothing moves now. */
export const unpinGreen = (green: string): void => {
  const plan = shownPlan.value
  if (plan === null) return
  const pins = (plan.pins ?? []).filter((pin) => pin.green !== green)
  const pinRisks = (plan.pinRisks ?? []).filter((risk) => risk.green !== green)
  takeDraft({ ...plan, pins, pinRisks }, rainAhead.value)
}
