import { NEVER } from '../spans.ts'
import { playOut, type DayPlan, type Delay, type Recourse } from './play-out.ts'
import type { Scenario } from './scenario.ts'

/** Chance that a day on which no green is opened after `openMin` sees a green caught. */
export type RiskPoint = {
  /** The last green opened. */
  readonly green: number
  readonly openMin: number
  /** Share of the skies in which some green is caught, 0 to 1. */
  readonly chance: number
}

/** What the weather that may come means for one day of a plan. */
export type DayRisk = {
  /** Index of the day in the problem. */
  readonly day: number
  /** Skies played out. */
  readonly scenarios: number
  /** Share of skies with a caught green if the greens planned for the day are opened as the sky allows, and none after the planned opening of the last, 0 to 1. */
  readonly chance: number
  /** The curve of risk against time: the planned openings in order, then the last green opened later and later until dark. Never falling. */
  readonly curve: readonly RiskPoint[]
  /** Latest minute of opening at which the chance stays under the level asked of the sample (`askedOf`); null when even the first green is over it. */
  readonly lastSafeStartMin: number | null
  /** Greens opened, and finished, on average over the skies: with none after the last planned opening, and with the last safe start kept. */
  readonly opened: { readonly plain: number; readonly safe: number }
  readonly finished: { readonly plain: number; readonly safe: number }
}

/** Minutes between the points of the curve after the last planned opening. */
const STEP_MIN = 15

/** From this chance on the curve has nothing more to say. */
const AS_GOOD_AS_SURE = 0.98

const recourse = (plan: DayPlan, lastOpenMin: number): Recourse => ({
  lastOpenMin: plan.problem.days.map((_, day) => (day === plan.day ? lastOpenMin : NEVER)),
})

/** Shares and means of a day over skies, the same skies for every question (common random numbers). */
export const overScenarios = (
  plan: DayPlan,
  scenarios: readonly Scenario[],
  lastOpenMin: number,
  delay: Delay | null = null,
): { readonly chance: number; readonly opened: number; readonly finished: number } => {
  const rule = recourse(plan, lastOpenMin)
  let [caught, opened, finished] = [0, 0, 0]
  for (const scenario of scenarios) {
    const outcome = playOut(plan, scenario, rule, delay)
    if (outcome.caught.length > 0) caught++
    opened += outcome.opened.length
    finished += outcome.finished.length
  }
  const count = Math.max(1, scenarios.length)
  return { chance: caught / count, opened: opened / count, finished: finished / count }
}

/**
 * The level asked of the sample: one standard error of it under the manager's, so that the true chance, which the sample only estimates, stays under the manager's
 * level five times in six.
 */
export const askedOf = (level: number, scenarios: number): number =>
  Math.max(0, level - Math.sqrt((level * (1 - level)) / Math.max(1, scenarios)))

/** The chance of a caught green when none is opened after the planned opening of the last. */
export const chanceAsPlanned = (plan: DayPlan, scenarios: readonly Scenario[]): number =>
  overScenarios(plan, scenarios, plan.greens.at(-1)?.openMin ?? -1).chance

/** The curve: one point for each planned opening, then the last green later and later. Chances are kept from falling where a later start changes who meets whom. */
const curveOf = (plan: DayPlan, scenarios: readonly Scenario[]): readonly RiskPoint[] => {
  const points: RiskPoint[] = []
  const add = (green: number, openMin: number, chance: number): void => {
    points.push({ green, openMin, chance: Math.max(chance, points.at(-1)?.chance ?? 0) })
  }
  for (const { green, openMin } of plan.greens)
    add(green, openMin, overScenarios(plan, scenarios, openMin).chance)
  const last = plan.greens.at(-1)
  const dark = plan.problem.days[plan.day]?.darkMin ?? 0
  if (last === undefined) return points
  // Later than this its work as planned runs into the dark, and nobody opens it.
  const latest = dark - (last.finishMin - last.openMin)
  for (
    let openMin = last.openMin + STEP_MIN;
    openMin <= latest && (points.at(-1)?.chance ?? 0) < AS_GOOD_AS_SURE;
    openMin += STEP_MIN
  )
    add(last.green, openMin, overScenarios(plan, scenarios, openMin, { green: last.green, openMin }).chance)
  return points
}

/** Latest opening of the curve under a level. Between two planned openings nobody opens anything, so the chance of the earlier one holds until the later one. */
const lastUnder = (curve: readonly RiskPoint[], level: number): number | null => {
  const over = curve.findIndex(({ chance }) => chance > level)
  if (over === 0) return null
  if (over < 0) return curve.at(-1)?.openMin ?? null
  return curve[over - 1]?.openMin ?? null
}

/**
 * Chance of a caught green on one day of a plan, against the minute after which no green is opened. `level` is the manager's: 0 to 1.
 * A sample average over the skies; its standard error is the square root of chance (1 - chance) / skies.
 */
export const dayRisk = (plan: DayPlan, scenarios: readonly Scenario[], level: number): DayRisk => {
  const curve = curveOf(plan, scenarios)
  const lastSafeStartMin = lastUnder(curve, askedOf(level, scenarios.length))
  const lastPlannedMin = plan.greens.at(-1)?.openMin ?? -1
  const plain = overScenarios(plan, scenarios, lastPlannedMin)
  const safe = overScenarios(plan, scenarios, Math.min(lastPlannedMin, lastSafeStartMin ?? -1))
  return {
    day: plan.day,
    scenarios: scenarios.length,
    chance: plain.chance,
    curve,
    lastSafeStartMin,
    opened: { plain: plain.opened, safe: safe.opened },
    finished: { plain: plain.finished, safe: safe.finished },
  }
}
