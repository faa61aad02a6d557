import { computed, signal } from '@preact/signals'
import * as v from 'valibot'
import type { Plan } from '@swardwright/engine'
import { planChanges, type GreenChange } from '../compute/plan-changes.ts'
import { courseId, facts } from './journal.ts'
import { keepText, keptJson } from './kept-text.ts'

const KEY = 'swardwright.plan-seen'

type Seen = { readonly course?: string | null; readonly entry: string; readonly openings: Plan['openings'] }

const isSeen = (value: unknown): value is Seen =>
  typeof value === 'object' &&
  value !== null &&
  'entry' in value &&
  'openings' in value &&
  Array.isArray(value.openings)

const seen = signal<Seen | null>(keptJson(KEY, v.custom<Seen>(isSeen)))

/** Keeps that the plan in force was seen on this device. */
export const markPlanSeen = (): void => {
  const plan = facts.value.plan
  if (plan === null || seen.value?.entry === plan.entry) return
  seen.value = { course: courseId.value, entry: plan.entry, openings: plan.value.openings }
  keepText(KEY, JSON.stringify(seen.value))
}

/** What another plan than the one seen last on this device has changed, with when it was settled; null where it was seen, or none was before. */
export const planNews = computed(
  (): { readonly at: string; readonly changes: readonly GreenChange[] } | null => {
    const plan = facts.value.plan
    const before = seen.value
    const isOthers = before?.course !== undefined && before.course !== courseId.value
    return plan === null || before === null || isOthers || before.entry === plan.entry
      ? null
      : { at: plan.at, changes: planChanges(before, plan.value) }
  },
)
