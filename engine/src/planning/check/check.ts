import { isoWithOffset } from '../../time/zone.ts'
import type { Problem, Schedule } from '../problem.ts'
import { RULES, type Violation } from '../rules.ts'
import { compileProblem, type CompiledProblem } from './compile.ts'
import { markPinned } from './as-pinned.ts'
import { factsOf, greenId, type Facts } from './facts.ts'
import type { Finding, RuleCheck } from './finding.ts'
import { againstRecord, type ToldSpell } from './rules/record.ts'
import { isFaultAlways, splitLost, type LostGreen, type Proofs } from './lost/lost.ts'
import { readPlanTasks, readScheduledTasks, type PlanToCheck } from './read-tasks.ts'
import { notAccountedFor } from './rules/accounted.ts'
import { breakMissed } from './rules/breaks.ts'
import { machineOut, notWorkable, outsideShift } from './rules/calendars.ts'
import { extraOperation, missingOperation } from './rules/chain.ts'
import { draggedBeforeDry } from './rules/drying.ts'
import { taskTooShort } from './rules/duration.ts'
import { daysWrong } from './rules/figure-days.ts'
import { feasibleWrong, objectiveWrong } from './rules/figure-objective.ts'
import { openingsWrong } from './rules/figure-openings.ts'
import { postsWrong } from './rules/figure-posts.ts'
import { sandWrong } from './rules/figure-sand.ts'
import { firstGreenUnchecked } from './rules/first-green.ts'
import { crewShort, noSkill, wrongMachine } from './rules/fitness.ts'
import { badTime, unknownId, unknownUnplanned } from './rules/identity.ts'
import { noMove, noSetUp } from './rules/machine-day.ts'
import { machineTwice, personTwice } from './rules/one-at-a-time.ts'
import { openInRain, openOvernight, sameDay, tooManyOpen } from './rules/open-greens.ts'
import { order } from './rules/order.ts'
import { hopper, stockGone } from './rules/sand.ts'
import { pinMoved, pinRisksWrong } from './rules/pins.ts'
import { servicesNotLocated } from './rules/services.ts'
import { tinesGone } from './rules/tines.ts'
import { noTravel } from './rules/travel.ts'

/** Rules about the tasks alone; those that most often catch a moved task come first, for `isClean`. */
const TASK_RULES: readonly RuleCheck[] = [
  machineTwice,
  personTwice,
  order,
  draggedBeforeDry,
  openInRain,
  openOvernight,
  notWorkable,
  outsideShift,
  noTravel,
  breakMissed,
  sameDay,
  tooManyOpen,
  firstGreenUnchecked,
  unknownId,
  badTime,
  wrongMachine,
  machineOut,
  noSkill,
  crewShort,
  missingOperation,
  extraOperation,
  taskTooShort,
  noSetUp,
  noMove,
  hopper,
  stockGone,
  tinesGone,
  servicesNotLocated,
]

/** What else the plan states beside its tasks, each part a lazy check. Parts that the plan leaves out are not judged. */
const statedChecks = (facts: Facts, plan: PlanToCheck): readonly (() => readonly Finding[])[] => [
  () => (plan.openings === undefined ? [] : openingsWrong(facts, plan.openings)),
  () => (plan.objective === undefined ? [] : objectiveWrong(facts, plan.objective)),
  () => (plan.days === undefined ? [] : daysWrong(facts, plan.days)),
  () => (plan.posts === undefined ? [] : postsWrong(facts, plan.posts)),
  () => (plan.sand === undefined ? [] : sandWrong(facts, plan.sand)),
]

/** What the plan says of its greens as a whole: which are left out, which are pinned. */
const greensChecks = (facts: Facts, plan: PlanToCheck): readonly (() => readonly Finding[])[] => [
  () => unknownUnplanned(facts.compiled, plan.unplanned ?? []),
  () =>
    notAccountedFor(
      facts,
      (plan.unplanned ?? []).map(({ green }) => green),
    ),
  () => pinMoved(facts, plan.pins ?? []),
]

/** Six digits after the point: sums of tonnes are not exact, and nobody weighs a gram. */
const rounded = (by: number): number => Math.round(by * 1e6) / 1e6

const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)

/** In time, those without a moment last; then in the order of the rules, then by green and tasks. */
const inOrder = (a: Finding, b: Finding): number => {
  const [atA, atB] = [a.atMin ?? Infinity, b.atMin ?? Infinity]
  if (atA !== atB) return atA < atB ? -1 : 1
  return (
    RULES.indexOf(a.rule) - RULES.indexOf(b.rule) ||
    byText(a.green ?? '', b.green ?? '') ||
    byText(a.tasks.join(' '), b.tasks.join(' ')) ||
    a.by - b.by
  )
}

const violationOf = ({ problem }: CompiledProblem, { atMin, by, ...found }: Finding): Violation => ({
  rule: found.rule,
  green: found.green,
  at: atMin === null ? null : isoWithOffset(problem.originMs + Math.round(atMin * 60_000), problem.timeZone),
  by: rounded(by),
  tasks: found.tasks,
  ...(found.asPinned === true ? { asPinned: true as const } : {}),
})

/** What is broken: rules about the tasks and greens, and parts that the plan states wrongly. `hard` is asked for when `feasible` is judged: a caller may have excused some. */
const judged = (
  facts: Facts,
  plan: PlanToCheck,
  excuse: (hard: readonly Finding[]) => readonly Finding[],
): readonly Finding[] => {
  const found = [
    ...TASK_RULES.flatMap((rule) => rule(facts)),
    ...greensChecks(facts, plan).flatMap((judge) => judge()),
  ]
  const hard = excuse(markPinned(facts, plan.pins ?? [], found))
  const stated = [
    ...statedChecks(facts, plan).flatMap((judge) => judge()),
    ...(plan.pinRisks === undefined ? [] : pinRisksWrong(plan.pinRisks, hard)),
    ...(plan.feasible === undefined ? [] : feasibleWrong(plan.feasible, hard.length)),
  ]
  return [...hard, ...stated].sort(inOrder)
}

/** All broken rules of a plan, in order of time, then of the rules; what is the price of a pin is marked so. Costs milliseconds; the problem is compiled once for many plans. */
export const check = (compiled: CompiledProblem, plan: PlanToCheck): readonly Violation[] =>
  judged(factsOf(compiled, readPlanTasks(compiled, plan)), plan, (hard) => hard).map((finding) =>
    violationOf(compiled, finding),
  )

/**
 * The same for a plan that was made in the middle of the work: what was begun before now is history, and what could not be saved any more is told apart
 * (`lost.ts`). The problem has `committed`.
 */
export const checkReplanned = (
  compiled: CompiledProblem,
  plan: PlanToCheck,
  told: readonly ToldSpell[],
): { readonly violations: readonly Violation[]; readonly lost: readonly LostGreen[] } => {
  const facts = factsOf(compiled, readPlanTasks(compiled, plan))
  let lost: readonly LostGreen[] = []
  const found = judged(facts, plan, (hard) => {
    const split = splitLost(facts, hard)
    lost = split.lost
    return [...split.faults, ...againstRecord(facts, told)]
  })
  return { violations: found.map((finding) => violationOf(compiled, finding)), lost }
}

/** Findings without those that are the price of the problem's pins. */
const notPinned = (facts: Facts, hard: readonly Finding[]): readonly Finding[] =>
  markPinned(facts, [], hard).filter(({ asPinned }) => asPinned !== true)

/** Faults of a schedule made in the middle of the work, and the greens that could not be saved; for callers that compare many. */
export const judgeSchedule = (
  compiled: CompiledProblem,
  schedule: Schedule,
  proofs?: Proofs,
): { readonly faults: readonly Finding[]; readonly lost: readonly LostGreen[] } => {
  const facts = factsOf(compiled, readScheduledTasks(compiled, schedule.tasks))
  const unplanned = [
    ...schedule.unplanned.flatMap(({ green }) => greenId(facts, green) ?? []),
    ...compiled.problem.excluded.map(({ green }) => green),
  ]
  const hard = TASK_RULES.flatMap((rule) => rule(facts))
  return splitLost(
    facts,
    [...notPinned(facts, hard), ...notAccountedFor(facts, [...new Set(unplanned)])],
    proofs,
  )
}

/** Whether `judgeSchedule` finds no fault. Stops at the first that nothing can excuse: for callers that try hundreds of variants. */
export const isFaultless = (compiled: CompiledProblem, schedule: Schedule, proofs: Proofs): boolean => {
  const facts = factsOf(compiled, readScheduledTasks(compiled, schedule.tasks))
  const hard: Finding[] = []
  for (const rule of TASK_RULES) {
    const found = notPinned(facts, rule(facts))
    if (found.some((finding) => isFaultAlways(facts, finding))) return false
    hard.push(...found)
  }
  const unplanned = new Set([
    ...schedule.unplanned.flatMap(({ green }) => greenId(facts, green) ?? []),
    ...compiled.problem.excluded.map(({ green }) => green),
  ])
  return (
    notAccountedFor(facts, [...unplanned]).length === 0 && splitLost(facts, hard, proofs).faults.length === 0
  )
}

/** All broken rules of one plan: `check` for those who check once. */
export const checkPlan = (problem: Problem, plan: PlanToCheck): readonly Violation[] =>
  check(compileProblem(problem), plan)

/** Whether a plan breaks no rule at all. Stops at the first that it does. */
export const isClean = (compiled: CompiledProblem, plan: PlanToCheck): boolean => {
  const facts = factsOf(compiled, readPlanTasks(compiled, plan))
  return (
    plan.feasible !== false &&
    TASK_RULES.every((rule) => rule(facts).length === 0) &&
    [...greensChecks(facts, plan), ...statedChecks(facts, plan)].every((judge) => judge().length === 0)
  )
}

/**
 * The same for what a search returns, without writing its times as text: for callers that try hundreds of variants.
 * Excluded greens count as listed, since a schedule does not name them. What is the price of a pin of the problem does not count.
 */
export const isCleanSchedule = (compiled: CompiledProblem, schedule: Schedule): boolean => {
  const facts = factsOf(compiled, readScheduledTasks(compiled, schedule.tasks))
  const unplanned = [
    ...schedule.unplanned.flatMap(({ green }) => greenId(facts, green) ?? []),
    ...compiled.problem.excluded.map(({ green }) => green),
  ]
  return (
    TASK_RULES.every((rule) => notPinned(facts, rule(facts)).length === 0) &&
    notAccountedFor(facts, [...new Set(unplanned)]).length === 0
  )
}
