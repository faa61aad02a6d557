import { planProblemOf, type Course, type Plan, type WeatherHours } from '@swardwright/engine'

type Answer = ReturnType<typeof planProblemOf>

let kept: { readonly key: string; readonly answer: Answer } | null = null

/** The problem behind a plan. Reading it takes a second on a phone and it stays the same through the day, so the last one is kept; what comes into the worker is a copy, hence told by content. */
export const problemFor = (plan: Plan, course: Course, weather: WeatherHours | null): Answer => {
  const key = JSON.stringify([plan, course, weather])
  if (kept?.key !== key) kept = { key, answer: planProblemOf(plan, course, weather) }
  return kept.answer
}
