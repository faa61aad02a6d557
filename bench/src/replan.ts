import {
  checkPlanAt,
  courseHash,
  disturbanceOf,
  makePlan,
  planProblemOf,
  replan,
  shiftOnly,
  type Plan,
  type ReplanInput,
} from '@swardwright/engine'
import { cpuSince } from './cpu.ts'
import { openDemo } from './demo.ts'

const GOAL_MEDIAN_MS = 150
const GOAL_WORST_MS = 500
const DISTURBANCES = 200
/** Replans before the count begins, so that the code is warm, as it is in an app that has planned the day. */
const WARM_UP = 40

const opened = <T>(read: { readonly ok: true; readonly value: T } | { readonly ok: false }): T => {
  if (read.ok) return read.value
  throw new Error('the demo cannot be planned')
}

/** The demo's week, planned, and the problem that is kept for replans. */
type Planned = Omit<ReplanInput, 'facts' | 'now' | 'plan'> & { readonly plan: Plan }

const planned = (): Planned => {
  const { course, prescription, weather, start } = openDemo()
  const plan = opened(makePlan({ course, courseHash: courseHash(course), prescription, weather, start }))
  return { course, weather, plan, problem: opened(planProblemOf(plan, course, weather)) }
}

/** What came of one disturbance. */
type Outcome = {
  readonly seed: number
  readonly kind: string
  readonly ms: number
  readonly by: string
  readonly faults: readonly string[]
  readonly caught: number
  readonly caughtByShift: number
  /** Greens that are caught though the old plan, only shifted to the right, finishes them in time. */
  readonly lostNeedlessly: readonly string[]
}

const outcomeOf = (base: Planned, seed: number): Outcome => {
  const { kind, now, facts } = disturbanceOf(base.problem, base.plan, seed)
  const input: ReplanInput = { ...base, now, facts }
  const mark = process.cpuUsage()
  const again = replan(input)
  const ms = cpuSince(mark) * 1000
  if (!again.ok) throw new Error(`disturbance ${seed} could not be used: ${JSON.stringify(again.error)}`)
  const checked = checkPlanAt({ ...input, plan: again.value.plan })
  const shift = shiftOnly(input)
  const caught = again.value.caught.map(({ green }) => green)
  return {
    seed,
    kind,
    ms,
    by: again.value.by,
    faults: checked.ok ? checked.value.violations.map(({ rule }) => rule) : [checked.error.type],
    caught: caught.length,
    caughtByShift: shift.ok ? shift.value.caught.length : 0,
    lostNeedlessly: shift.ok ? shift.value.finishedInTime.filter((green) => caught.includes(green)) : [],
  }
}

const sum = (list: readonly number[]): number => list.reduce((total, one) => total + one, 0)

/** `bench replan [--json]`: the demo's week, 200 seeded disturbances at random minutes, each made again and judged. Exit 1 when a plan is not clean or a green is lost needlessly. */
export const run = (argv: readonly string[]): Promise<number> => {
  const [flag, ...more] = argv
  if ((flag !== undefined && flag !== '--json') || more.length > 0) {
    process.stderr.write(`unexpected '${more[0] ?? flag}'; bench replan takes only --json\n`)
    return Promise.resolve(2)
  }
  const base = planned()
  for (let seed = 1; seed <= WARM_UP; seed++) outcomeOf(base, DISTURBANCES + seed)
  const outcomes = Array.from({ length: DISTURBANCES }, (_, index) => outcomeOf(base, index + 1))
  const ms = outcomes.map((one) => one.ms).sort((a, b) => a - b)
  const unclean = outcomes.filter(({ faults }) => faults.length > 0)
  const figures = {
    disturbances: outcomes.length,
    medianMs: ms[ms.length >> 1] ?? 0,
    worstMs: ms.at(-1) ?? 0,
    goalMedianMs: GOAL_MEDIAN_MS,
    goalWorstMs: GOAL_WORST_MS,
    clean: outcomes.length - unclean.length,
    unclean: unclean.map(({ seed, kind, faults }) => ({ seed, kind, faults })),
    greensCaught: sum(outcomes.map(({ caught }) => caught)),
    greensCaughtByShift: sum(outcomes.map(({ caughtByShift }) => caughtByShift)),
    greensLostNeedlessly: sum(outcomes.map(({ lostNeedlessly }) => lostNeedlessly.length)),
    ways: Object.fromEntries(
      [...new Set(outcomes.map(({ by }) => by))]
        .sort()
        .map((by) => [by, outcomes.filter((one) => one.by === by).length]),
    ),
  }
  process.stdout.write(
    flag === '--json'
      ? `${JSON.stringify(figures)}\n`
      : [
          `${figures.disturbances} disturbances of the demo's week, processor time on one core, warm`,
          `median ${figures.medianMs.toFixed(0)} ms (goal ${GOAL_MEDIAN_MS}), worst ${figures.worstMs.toFixed(0)} ms (goal ${GOAL_WORST_MS})`,
          `clean: ${figures.clean}; greens caught ${figures.greensCaught} (${figures.greensCaughtByShift} if the old plan were only shifted), needlessly ${figures.greensLostNeedlessly}`,
          `ways: ${Object.entries(figures.ways)
            .map(([by, count]) => `${by} ${count}`)
            .join(', ')}`,
          '',
        ].join('\n'),
  )
  return Promise.resolve(unclean.length === 0 && figures.greensLostNeedlessly === 0 ? 0 : 1)
}
