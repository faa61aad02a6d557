import { computed, signal } from '@preact/signals'
import { DEFAULT_RISK, type OneMore, type RiskWish } from '@swardwright/engine'
import type { Work } from '../compute/work.ts'
import { computeChances } from './compute.ts'
import { course } from './course.ts'
import { latest } from './latest.ts'
import { planFailure, planInput, rainAhead, shownPlan, takeDraft } from './plan.ts'
import { weather } from './weather.ts'

/** The manager's level and how many skies are drawn. Kept while the app is open. */
export const riskWish = signal<RiskWish>({ ...DEFAULT_RISK, draws: 200 })

/** What there is to reckon: the plan shown, under the weather and the wish of now. Null without a plan or a forecast. */
export const riskQuestion = computed((): Work['risk']['input'] | null => {
  const [plan, known, hours] = [shownPlan.value, course.value, weather.value]
  if (plan === null || known === null || hours === null) return null
  return { plan, course: known, weather: hours, wish: riskWish.value }
})

type Answer = { readonly to: Work['risk']['input']; readonly told: Work['risk']['output'] }

const answer = latest<Answer>()

/** The question that was asked last. */
let asked: Work['risk']['input'] | null = null

/** The chance of a caught green on each day of the plan shown. While it is reckoned anew, the last answer stays and `isOld` says so. */
export const risk = {
  told: computed(() => answer.value.value?.told ?? null),
  isOld: computed(() => answer.value.value?.to !== riskQuestion.value),
  pending: answer.pending,
  fault: answer.fault,
}

/** Has the plan shown played out under the skies that may come. What was asked already is not asked again, unless it failed. */
export const askRisk = (): void => {
  const to = riskQuestion.value
  if (to !== null && to === asked && answer.fault.value === null) return
  asked = to
  if (to === null) return answer.clear()
  answer.ask(async () => ({ to, told: await computeChances('risk', to) }))
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
    const made = await computeChances('safePlan', { input, wish: riskWish.value })
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
  oneMore.ask(() => computeChances('whatIf', { input, changes }))
}
