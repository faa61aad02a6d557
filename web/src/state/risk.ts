import { signal } from '@preact/signals'
import { DEFAULT_RISK, type OneMore, type RiskWish } from '@swardwright/engine'
import type { Work } from '../compute/work.ts'
import { computeLong } from './compute.ts'
import { course } from './course.ts'
import { latest } from './latest.ts'
import { planFailure, planInput, rainAhead, shownPlan, takeDraft } from './plan.ts'
import { weather } from './weather.ts'

/** The manager's level and how many skies are drawn. Kept while the app is open. */
export const riskWish = signal<RiskWish>({ ...DEFAULT_RISK, draws: 200 })

/** The chance of a caught green on each day of the plan shown. */
export const risk = latest<Work['risk']['output']>()

/** Has the plan shown played out under the skies that may come. */
export const askRisk = (): void => {
  const [plan, known, hours] = [shownPlan.value, course.value, weather.value]
  if (plan === null || known === null || hours === null) return risk.clear()
  const wish = riskWish.value
  risk.ask(() => computeLong('risk', { plan, course: known, weather: hours, wish }))
}

/** A plan under the level is being made. */
export const makingSafe = signal(false)

/** Plans the week so that the chance stays under the level; the plan becomes the draft. */
export const planSafely = async (): Promise<void> => {
  const input = planInput.value
  if (input === null || makingSafe.value) return
  const rain = rainAhead.value
  makingSafe.value = true
  try {
    const made = await computeLong('safePlan', { input, wish: riskWish.value })
    if (made.ok) takeDraft(made.value.plan, rain)
    else planFailure.value = made.error.type === 'noWeather' ? null : made.error
  } finally {
    makingSafe.value = false
  }
}

/** The week as it is and with one thing more. */
export const oneMore = latest<Work['whatIf']['output']>()

/** Has the week planned as it is and with each change. */
export const askOneMore = (changes: readonly OneMore[]): void => {
  const input = planInput.value
  if (input === null) return oneMore.clear()
  oneMore.ask(() => computeLong('whatIf', { input, changes }))
}
