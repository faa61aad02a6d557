import { chainMarks } from '../../chain.ts'
import { NEVER } from '../../spans.ts'
import { dayOfStart } from '../days.ts'
import { greenId, type Facts } from '../facts.ts'
import type { Finding } from '../finding.ts'
import { SLACK_T } from '../spans.ts'
import type { WorkState } from '../work-state.ts'
import { canBeDone, mostSavable } from './most-savable.ts'
import { earliestAt, leftSteps, lostGround, type LostGround } from './left-of-green.ts'

/** How a green stands when rain or night catches it. */
export type CaughtState = 'opened' | 'cleared' | 'dressed'

/** Why a green in work could not be finished in time whatever was done. Closed. */
export type LostReason =
  /** It was caught before now. */
  | 'already'
  /** With every machine and everybody trained for it alone it would still be too late. */
  | 'tooLittleTime'
  /** There would be time, but the sand that it needs comes too late. */
  | 'sandTooLate'
  /** Each of the greens in work could be saved, but not so many together. */
  | 'notAllTogether'
  /** Nobody can do one of its steps any more within the days planned. */
  | 'cannotBeDone'

/** A green that is caught and that no plan could have saved. */
export type LostGreen = {
  readonly green: number
  readonly id: string
  /** How it stands when it is caught, and when that is; null where it is not caught but can't be finished. */
  readonly state: CaughtState
  readonly atMin: number | null
  readonly reason: LostReason
  /** Minutes by which the very earliest finish is too late; 0 where that does not say. */
  readonly byMin: number
}

const STATE_RULES = ['openInRain', 'sameDay', 'openOvernight'] as const

const isStateRule = (finding: Finding): boolean => (STATE_RULES as readonly string[]).includes(finding.rule)

const stateAt = (state: WorkState, atMin: number): CaughtState => {
  if (state.dressedMin !== null && state.dressedMin <= atMin) return 'dressed'
  return state.clearedMin !== null && state.clearedMin <= atMin ? 'cleared' : 'opened'
}

/** A green in work at now with what its rules ask: by when it must be at which mark of its chain. */
export type InWork = { readonly state: WorkState; readonly mark: number; readonly deadline: number }

/** First rain, dark or midnight that the rules hold against a green in work at now, and the mark that it must have reached by then. */
export const deadlinesOf = (facts: Facts, state: WorkState, nowMin: number): readonly InWork[] => {
  const { problem, compiled } = facts
  const green = problem.greens[state.green]
  if (green === undefined) return []
  const marks = chainMarks(green)
  const rain = problem.rain.find(({ end }) => end > nowMin)?.start ?? NEVER
  const today = dayOfStart(problem.days, state.openedMin ?? nowMin)
  const night = Math.min(
    compiled.evenings[today]?.untilMidnight.start ?? NEVER,
    problem.days[today]?.endMin ?? NEVER,
  )
  const nightMark = problem.settings.mayStandDryNight ? marks.clear : marks.finish
  return [
    { state, mark: marks.finish, deadline: rain },
    { state, mark: nightMark, deadline: night },
  ]
}

/** Whether a finding is about what was begun before now alone: then no plan from now on can mend it. */
const isHistory = (facts: Facts, finding: Finding, nowMin: number): boolean => {
  if (finding.rule === 'tooManyOpen' || finding.rule === 'firstGreenUnchecked')
    return finding.atMin !== null && finding.atMin < nowMin
  if (finding.tasks.length === 0) return false
  return finding.tasks.every((id) => {
    const task = facts.tasks.find((one) => one.id === id)
    return task !== undefined && task.timed && task.startMin < nowMin
  })
}

const lostOf = (
  facts: Facts,
  state: WorkState,
  atMin: number | null,
  reason: LostReason,
  byMin: number,
): LostGreen => ({
  green: state.green,
  id: greenId(facts, state.green) ?? '',
  state: stateAt(state, atMin ?? state.inWorkUntilMin),
  atMin,
  reason,
  byMin,
})

/** First step of a green that is not begun by now and that nobody can do. */
const stepNobodyDoes = (ground: LostGround, green: number): number =>
  (ground.facts.problem.greens[green]?.steps ?? []).findIndex((_, step) => {
    const task = ground.facts.stepTasks[green]?.[step]
    return (task === undefined || task.startMin >= ground.nowMin) && !canBeDone(ground, green, step)
  })

/** Whether the sand that is left and still to come is too little for what a green still needs, even if all of it went there. */
const lacksSand = ({ facts, nowMin }: LostGround, green: number): boolean => {
  const { problem } = facts
  const own = problem.greens[green]
  if (own === undefined) return false
  const isBegun = (task: { readonly startMin: number } | undefined): boolean =>
    task !== undefined && task.startMin < nowMin
  const loads = facts.timed.filter((task) => task.kind === 'load' && isBegun(task))
  const sandOf = (at: { readonly green: number; readonly step: number } | null): number =>
    at === null || problem.greens[at.green]?.sand.kind !== own.sand.kind
      ? 0
      : (problem.greens[at.green]?.steps[at.step]?.sandT ?? 0)
  const takenT = loads.reduce((sum, task) => sum + sandOf(task.served), 0)
  const supplyT = problem.stores.reduce(
    (sum, store) =>
      store.kind !== own.sand.kind
        ? sum
        : store.deliveries.reduce(
            (more, { atMin, massT }) => (atMin <= problem.horizonMin ? more + massT : more),
            sum + store.stockT,
          ),
    0,
  )
  const needT = own.steps.reduce((sum, step, index) => {
    const isLoaded = loads.some(({ served }) => served?.green === green && served.step === index)
    return isLoaded || isBegun(facts.stepTasks[green]?.[index]) ? sum : sum + step.sandT
  }, 0)
  return needT > 0 && needT > supplyT - takenT + SLACK_T
}

/** As if sand were never short. */
const PLENTY: LostGround['sand'] = { byMin: () => Infinity, from: () => 0 }

/** What has been proven, by what was asked: it hangs on what was begun before now, not on the plan that is judged, so plans of one moment share it. */
export type Proofs = Map<string, number>

const proven = (proofs: Proofs, key: string, prove: () => number): number => {
  const found = proofs.get(key) ?? prove()
  proofs.set(key, found)
  return found
}

/** Which of the greens that miss a deadline could not have been saved. */
const excusedAt = (
  ground: LostGround,
  all: readonly InWork[],
  caught: ReadonlySet<number>,
  proofs: Proofs,
): readonly LostGreen[] => {
  const { facts } = ground
  if (!all.some(({ state }) => caught.has(state.green))) return []
  const alone = new Map(
    all.map(({ state, mark, deadline }) => {
      const earliest = proven(proofs, `soonest ${state.green} ${mark}`, () =>
        earliestAt(ground, state.green, mark),
      )
      return [state.green, earliest > deadline ? Math.min(earliest, NEVER) - deadline : 0] as const
    }),
  )
  const lost = all
    .filter(({ state }) => caught.has(state.green) && (alone.get(state.green) ?? 0) > 0)
    .map(({ state, mark, deadline }) => {
      const by = alone.get(state.green) ?? 0
      if (by >= NEVER - deadline) return lostOf(facts, state, deadline, 'cannotBeDone', 0)
      const withSand = proven(proofs, `with sand ${state.green} ${mark}`, () =>
        earliestAt({ ...ground, sand: PLENTY }, state.green, mark),
      )
      return lostOf(facts, state, deadline, withSand <= deadline ? 'sandTooLate' : 'tooLittleTime', by)
    })
  const savable = all.filter(({ state }) => (alone.get(state.green) ?? 0) === 0)
  const missed = savable.filter(({ state }) => caught.has(state.green))
  if (missed.length === 0) return lost
  const asked = savable.map(({ state, mark, deadline }) => `${state.green} ${mark} ${deadline}`).join(', ')
  const most = proven(proofs, `most ${asked}`, () => {
    const greens = savable.map(({ state }) => state.green)
    const left = savable.map(({ state: { green }, mark, deadline }) =>
      leftSteps(
        ground,
        green,
        mark,
        deadline,
        greens.filter((other) => other !== green),
      ),
    )
    // Rain and night often leave the same windows: then it is one question.
    const windows = JSON.stringify(left.map((steps) => steps.map(({ green, options }) => [green, options])))
    return proven(proofs, windows, () => mostSavable(ground, left))
  })
  const reason = savable.length === 1 ? 'tooLittleTime' : 'notAllTogether'
  return missed.length > savable.length - most
    ? lost
    : [...lost, ...missed.map(({ state, deadline }) => lostOf(facts, state, deadline, reason, 0))]
}

/** Whether a finding is a fault whatever else the plan does: no matter of history, nor of a green that may have been lost. */
export const isFaultAlways = (facts: Facts, finding: Finding): boolean => {
  const nowMin = facts.problem.committed?.nowMin
  return (
    nowMin === undefined ||
    (!isStateRule(finding) && finding.rule !== 'missingOperation' && !isHistory(facts, finding, nowMin))
  )
}

/**
 * Tells faults of a plan from what was lost before it was made. History is excused: findings that name only tasks begun before now. A green that was in work at now and is caught by
 * rain or night is excused only if it was caught already, or if it is proven that it, or that so many of the greens in work, could not be finished in time by anybody. A
 * step that nobody can do any more may be missing from such a green.
 */
export const splitLost = (
  facts: Facts,
  hard: readonly Finding[],
  proofs: Proofs = new Map(),
): { readonly faults: readonly Finding[]; readonly lost: readonly LostGreen[] } => {
  const nowMin = facts.problem.committed?.nowMin
  if (nowMin === undefined || hard.length === 0) return { faults: hard, lost: [] }
  const ground = lostGround(facts, nowMin)
  const inWork = facts.states.filter(
    ({ openedMin, finishedMin }) =>
      openedMin !== null && openedMin < nowMin && (finishedMin === null || finishedMin > nowMin),
  )
  const states = new Map(facts.states.map((state) => [state.green, state]))
  const indexOf = new Map(facts.compiled.greenIds.map((id, index) => [id, index]))
  const greenOf = (finding: Finding): number => indexOf.get(finding.green ?? '') ?? -1
  const faults = hard.filter((finding) => isFaultAlways(facts, finding))
  const caught = hard.filter(isStateRule)
  const before = new Map(
    caught
      .filter(({ atMin }) => atMin !== null && atMin < nowMin)
      .map((finding) => [greenOf(finding), finding.atMin ?? 0]),
  )
  const lost = new Map<number, LostGreen>()
  for (const [green, atMin] of before) {
    const state = states.get(green)
    if (state !== undefined) lost.set(green, lostOf(facts, state, atMin, 'already', 0))
  }
  const missing = hard.filter(({ rule }) => rule === 'missingOperation')
  for (const state of inWork) {
    const isMissing = missing.some((finding) => greenOf(finding) === state.green)
    if (!isMissing || lost.has(state.green)) continue
    const last = (facts.problem.greens[state.green]?.steps.length ?? 0) - 1
    const canEnd =
      stepNobodyDoes(ground, state.green) < 0 &&
      !lacksSand(ground, state.green) &&
      earliestAt(ground, state.green, last) < NEVER
    if (canEnd) continue
    const first = caught.find((finding) => greenOf(finding) === state.green)
    lost.set(state.green, lostOf(facts, state, first?.atMin ?? null, 'cannotBeDone', 0))
  }
  const still = inWork.filter(({ green }) => !lost.has(green))
  const byRule = [0, 1].map((which) =>
    still.flatMap((state) => deadlinesOf(facts, state, nowMin)[which] ?? []),
  )
  for (const [which, all] of byRule.entries()) {
    const rules: readonly string[] = which === 0 ? ['openInRain'] : ['sameDay', 'openOvernight']
    const missed = new Set(
      caught.filter(({ rule }) => rules.includes(rule)).map((finding) => greenOf(finding)),
    )
    for (const one of excusedAt(ground, all, missed, proofs))
      if (!lost.has(one.green)) lost.set(one.green, one)
  }
  const unexcused = [...caught, ...missing].filter((finding) => !lost.has(greenOf(finding)))
  return {
    faults: [...faults, ...unexcused],
    lost: [...lost.values()].sort((a, b) => (a.atMin ?? NEVER) - (b.atMin ?? NEVER) || a.green - b.green),
  }
}
