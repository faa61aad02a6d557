import { HOUR_MS, type Plan } from '@swardwright/engine'
import { dateAt } from '@swardwright/present'

/** Which moment of the year it is, and the day of work that it is about. */
export type Moment =
  | { readonly kind: 'ahead' }
  | { readonly kind: 'eve'; readonly date: string }
  | { readonly kind: 'day'; readonly date: string }
  | { readonly kind: 'after' }

/** So long before the first task of a day the evening before begins. */
const EVE_MS = 20 * HOUR_MS

type WorkDay = { readonly date: string; readonly startMs: number; readonly finishMs: number }

/** The days with work of a plan, from first start to last finish. */
export const workDays = (plan: Plan, timeZone: string): readonly WorkDay[] => {
  const days = new Map<string, WorkDay>()
  for (const task of plan.tasks) {
    const [startMs, finishMs] = [Date.parse(task.start), Date.parse(task.finish)]
    const date = dateAt(startMs, timeZone)
    const known = days.get(date)
    days.set(date, {
      date,
      startMs: Math.min(startMs, known?.startMs ?? Infinity),
      finishMs: Math.max(finishMs, known?.finishMs ?? -Infinity),
    })
  }
  return [...days.values()].sort((a, b) => a.startMs - b.startMs)
}

/** The moment that applies at an instant. */
export const momentOf = (plan: Plan | null, atMs: number, timeZone: string): Moment => {
  const days = plan === null ? [] : workDays(plan, timeZone)
  const next = days.find((day) => atMs <= day.finishMs)
  if (next === undefined) return days.length === 0 ? { kind: 'ahead' } : { kind: 'after' }
  if (atMs >= next.startMs) return { kind: 'day', date: next.date }
  return next.startMs - atMs <= EVE_MS ? { kind: 'eve', date: next.date } : { kind: 'ahead' }
}
