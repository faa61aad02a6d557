import { chainMarks } from '../chain.ts'
import { fail, ok, type Result } from '../../result.ts'
import type { CaughtState } from '../check/lost/lost.ts'
import type { Operation } from '../operations.ts'
import type { Problem, ProblemStep, ScheduledTask, Span } from '../problem.ts'
import { instantWriter } from '../schedule-to-plan.ts'
import type { ReadSky } from '../sky.ts'
import { mergeSpans, subtractSpans } from '../spans.ts'
import { weatherSky } from '../weather-sky.ts'
import { copyField, dayOf, isWork } from './field.ts'
import { coursesOf, marksOf } from './judge-field.ts'
import type { ReplanInput } from './make-replan.ts'
import { byTime, stepTasks } from './old-plan.ts'
import type { Broken } from './repair.ts'
import { brokenOf } from './replan.ts'
import { tailsOf, workOff } from './rescue.ts'
import { BAIL_MODES, shortened, SKIPPABLE_FROM_PASS, type BailMode } from './short-chain.ts'
import { situationOf, type Situation, type SituationError } from './situation.ts'

/** How a green stands when the rain begins. */
export type StateAtRain = CaughtState | 'finished'

/** A step of the bail-out. */
export type BailTask = {
  readonly green: string
  readonly operation: Operation
  readonly pass: number
  readonly load: number | null
  readonly machine: string | null
  readonly people: readonly string[]
  readonly start: string
  readonly finish: string
}

/** What becomes of a green in work. */
export type BailGreen = {
  readonly green: string
  readonly state: CaughtState
  readonly mode: BailMode
  readonly stateAtRain: StateAtRain
  /** When its last step before the rain is over, a running one too; null where nothing more is done. */
  readonly over: string | null
  /** Steps up to the finish that are not done before the rain: skipped where the green is finished, else left for later. */
  readonly notDone: readonly StepName[]
}

/** A step by what it is. */
export type StepName = { readonly operation: Operation; readonly pass: number; readonly load: number | null }

/** The bail-out: rain in so many minutes. */
export type BailOut = {
  readonly now: string
  readonly rainAt: string
  /** Greens in work, in the order in which they are done. */
  readonly greens: readonly BailGreen[]
  /** Greens that were to be opened today and are not opened any more. */
  readonly dontOpen: readonly string[]
  /** Steps that run now and go on to their end. */
  readonly running: readonly BailTask[]
  /** What each does, in order; those with nothing to do are left out. */
  readonly people: readonly { readonly person: string; readonly tasks: readonly BailTask[] }[]
  /** Greens not finished when it rains; and how many it would be if the plan simply went on. */
  readonly caught: number
  readonly caughtIfPlanGoesOn: number
}

/** The same problem with rain from a minute to the end of that day. */
const withRainFrom = (problem: Problem, rainMin: number): Problem => {
  const day = problem.days[dayOf(problem, rainMin)]
  const wet: Span = { start: rainMin, end: day?.endMin ?? problem.horizonMin }
  return {
    ...problem,
    rain: mergeSpans([...problem.rain, wet]),
    workable: new Map(
      [...problem.workable].map(([operation, spans]) => [
        operation,
        operation === 'water' ? spans : subtractSpans(spans, [wet]),
      ]),
    ),
  }
}

/** How a green stands at a minute, by the tasks that are over by then. */
const stateAt = (
  problem: Problem,
  tasks: readonly ScheduledTask[],
  green: number,
  minute: number,
): StateAtRain => {
  const own = problem.greens[green]
  const course = coursesOf(problem, tasks, marksOf(problem)).find((one) => one.green === green)
  if (own === undefined || course === undefined) return 'opened'
  const has = (effect: 'clears' | 'dresses' | 'finishes'): boolean =>
    own.steps.some(({ effects }) => effects.includes(effect))
  if (has('finishes') && course.finished <= minute) return 'finished'
  if (has('dresses') && course.dressed <= minute) return 'dressed'
  return has('clears') && course.cleared <= minute ? 'cleared' : 'opened'
}

/** Steps of the whole chain, up to the finish, that the tasks do not do. */
const notDone = (
  problem: Problem,
  tasks: readonly ScheduledTask[],
  green: number,
  finish: number,
): readonly StepName[] => {
  const done = stepTasks(problem, tasks)[green] ?? []
  return (problem.greens[green]?.steps ?? [])
    .slice(0, finish + 1)
    .flatMap(({ operation, pass, load }, index) => (done[index] == null ? [{ operation, pass, load }] : []))
}

/** How bad a state is in rain: cores lying smear; sand lying wet clogs and can't be dragged; a cleared green only loses fines (common practice, no source). */
const BADNESS: Readonly<Record<StateAtRain, number>> = { opened: 3, dressed: 2, cleared: 1, finished: 0 }

type Tried = {
  readonly modes: ReadonlyMap<number, BailMode>
  readonly tasks: readonly ScheduledTask[]
  readonly states: ReadonlyMap<number, StateAtRain>
  readonly skipped: ReadonlyMap<number, readonly ProblemStep[]>
  readonly rank: readonly number[]
}

type Scene = {
  readonly broken: Broken
  readonly greens: readonly number[]
  readonly rainMin: number
}

/** Works the greens off in the given modes and looks at them when the rain begins. */
const tryModes = ({ broken, greens, rainMin }: Scene, modes: ReadonlyMap<number, BailMode>): Tried => {
  const short = new Map(
    greens.flatMap((green) => {
      const own = broken.problem.greens[green]
      const marks = broken.marks[green]
      const done = broken.stood.done[green] ?? 0
      return own === undefined || marks === undefined
        ? []
        : [[green, shortened(own, marks, done, modes.get(green) ?? 'finishAll')] as const]
    }),
  )
  const problem: Problem = {
    ...broken.problem,
    greens: broken.problem.greens.map((green, index) => short.get(index)?.green ?? green),
  }
  const old = problem.greens.map((green, index) => {
    const was = broken.problem.greens[index]
    return green.steps.map(
      (step) =>
        broken.old[index]?.[
          was?.steps.findIndex(
            (one) =>
              one === step ||
              (one.operation === step.operation && one.pass === step.pass && one.load === step.load),
          ) ?? -1
        ] ?? null,
    )
  })
  const scene = {
    problem,
    marks: problem.greens.map(chainMarks),
    old,
    opened: new Set(greens),
    stood: { ...copyField(broken.stood), problem },
  }
  const field = workOff(scene, tailsOf(scene), new Set(), rainMin)
  const nowMin = problem.committed?.nowMin ?? 0
  const tasks = field.tasks.filter((task) => task.startMin < nowMin || task.finishMin <= rainMin).sort(byTime)
  const states = new Map(greens.map((green) => [green, stateAt(problem, tasks, green, rainMin)]))
  const all = [...states.values()]
  const work = tasks.filter((task) => isWork(task) && task.startMin >= nowMin)
  const before = (green: number): StateAtRain => stateAt(problem, broken.stood.tasks, green, rainMin)
  const isUnfinished = (green: number | null): boolean => green !== null && states.get(green) !== 'finished'
  // Sand on a green that is not dragged in any more lies in the rain: as bad as if all of it lay there.
  const sandLost = work.filter((task) => task.kind === 'dress' && isUnfinished(task.green)).length
  const clearing = (task: ScheduledTask): boolean =>
    task.kind !== 'dress' && SKIPPABLE_FROM_PASS[task.kind as Operation] === undefined
  const inVain = work.filter(
    (task) =>
      !clearing(task) &&
      isUnfinished(task.green) &&
      states.get(task.green ?? -1) === before(task.green ?? -1),
  ).length
  const liftedAtLeast = work.filter((task) => isUnfinished(task.green) && clearing(task)).length
  const skips = [...short.values()].reduce((sum, one) => sum + one.skipped.length, 0)
  const ends = work.reduce((sum, task) => sum + task.finishMin, 0)
  return {
    modes,
    tasks,
    states,
    skipped: new Map([...short].map(([green, one]) => [green, one.skipped])),
    rank: [
      all.filter((state) => state !== 'finished').length,
      all.reduce((sum, state) => sum + BADNESS[state], 0),
      sandLost + inVain,
      -liftedAtLeast,
      skips,
      ends,
    ],
  }
}

const isBetter = (a: Tried, b: Tried): boolean => {
  const part = a.rank.findIndex((value, index) => value !== b.rank[index])
  return part >= 0 && (a.rank[part] ?? 0) < (b.rank[part] ?? 0)
}

/** Up to so many choices of modes are all tried; beyond, one green at a time is changed until nothing gets better. */
const MOST_CHOICES = 256

const allModes = (greens: readonly number[]): readonly ReadonlyMap<number, BailMode>[] =>
  greens.reduce<readonly ReadonlyMap<number, BailMode>[]>(
    (choices, green) =>
      choices.flatMap((chosen) => BAIL_MODES.map((mode) => new Map([...chosen, [green, mode]]))),
    [new Map()],
  )

const descend = (scene: Scene, from: Tried): Tried => {
  let best = from
  for (;;) {
    const before = best
    for (const green of scene.greens)
      for (const mode of BAIL_MODES) {
        if (best.modes.get(green) === mode) continue
        const tried = tryModes(scene, new Map([...best.modes, [green, mode]]))
        if (isBetter(tried, best)) best = tried
      }
    if (best === before) return best
  }
}

const bestModes = (scene: Scene): Tried => {
  const { greens } = scene
  const all = (mode: BailMode): Tried => tryModes(scene, new Map(greens.map((green) => [green, mode])))
  if (BAIL_MODES.length ** greens.length <= MOST_CHOICES)
    return allModes(greens)
      .map((modes) => tryModes(scene, modes))
      .reduce((best, tried) => (isBetter(tried, best) ? tried : best))
  const starts = [all('finishAll'), all('finishShort'), all('clearOnly')].map((start) =>
    descend(scene, start),
  )
  return starts.reduce((best, tried) => (isBetter(tried, best) ? tried : best))
}

/** The mode by what is really done before the rain. */
const modeOf = (tried: Tried, green: number, work: readonly ScheduledTask[]): BailMode => {
  if (work.length === 0 && tried.states.get(green) !== 'finished') return 'leave'
  if (tried.states.get(green) !== 'finished') return 'clearOnly'
  return (tried.skipped.get(green) ?? []).length === 0 ? 'finishAll' : 'finishShort'
}

const caughtAsPlanned = (
  { problem, standing, oldTasks, moment }: Situation,
  greens: readonly number[],
  rainMin: number,
): number => {
  const rest = oldTasks.filter(({ startMin, finishMin }) => startMin >= moment.nowMin && finishMin <= rainMin)
  const tasks = [...standing.tasks, ...rest].sort(byTime)
  const openedToo = rest.flatMap((task) => (task.green !== null && isWork(task) ? [task.green] : []))
  const all = [...new Set([...greens, ...openedToo])]
  return all.filter((green) => stateAt(problem, tasks, green, rainMin) !== 'finished').length
}

/**
 * Rain in so many minutes: what is done with each green in work, who goes where, and how many are caught. No green is opened any more. As few as can be are caught, then the
 * caught ones stand as well as can be, then as little as can be is skipped. Errors as of `replan`.
 */
export const bailOut = (
  input: ReplanInput & { readonly rainInMin: number },
  readSky: ReadSky = weatherSky,
): Result<BailOut, SituationError> => {
  const read = situationOf({ ...input, tasks: input.plan.tasks }, readSky)
  if (!read.ok) return fail(read.error)
  const situation = read.value
  const nowMin = situation.moment.nowMin
  const rainMin = nowMin + input.rainInMin
  const broken = brokenOf({ ...situation, problem: withRainFrom(situation.problem, rainMin) })
  const { problem } = broken
  const open = coursesOf(problem, broken.stood.tasks, broken.marks).filter(
    ({ finished }) => finished > nowMin,
  )
  const greens = open.map(({ green }) => green)
  const best = bestModes({ broken, greens, rainMin })
  const write = instantWriter(problem)
  const id = (green: number): string => problem.greens[green]?.id ?? ''
  const told = (task: ScheduledTask): BailTask => ({
    green: task.green === null ? '' : id(task.green),
    operation: task.kind as Operation,
    pass: task.pass ?? 1,
    load: task.load,
    machine: task.machine === null ? null : (problem.machines[task.machine]?.id ?? null),
    people: task.people.map((person) => problem.people[person]?.id ?? ''),
    start: write(task.startMin),
    finish: write(task.finishMin),
  })
  const work = best.tasks.filter((task) => isWork(task) && task.startMin >= nowMin)
  const today = dayOf(problem, nowMin)
  const rows = greens.map((green): BailGreen => {
    const own = work.filter((task) => task.green === green)
    const mode = modeOf(best, green, own)
    const last = best.tasks.filter((task) => task.green === green && isWork(task)).at(-1)?.finishMin ?? 0
    const over = last > nowMin ? last : undefined
    const state = stateAt(problem, broken.stood.tasks, green, nowMin)
    return {
      green: id(green),
      state: state === 'finished' ? 'dressed' : state,
      mode,
      stateAtRain: best.states.get(green) ?? 'opened',
      over: over === undefined ? null : write(over),
      notDone: notDone(situation.problem, best.tasks, green, broken.marks[green]?.finish ?? 0),
    }
  })
  return ok({
    now: write(nowMin),
    rainAt: write(rainMin),
    greens: rows.sort((a, b) => ((a.over ?? '~') < (b.over ?? '~') ? -1 : 1)),
    dontOpen: problem.greens.flatMap((green, index) => {
      const was = broken.oldOpening[index] ?? null
      return was !== null && !broken.opened.has(index) && dayOf(problem, was) === today ? [green.id] : []
    }),
    running: broken.stood.tasks.filter((task) => isWork(task) && task.finishMin > nowMin).map(told),
    people: problem.people.flatMap((person, index) => {
      const own = work.filter((task) => task.people.includes(index)).map(told)
      return own.length === 0 ? [] : [{ person: person.id, tasks: own }]
    }),
    caught: rows.filter(({ stateAtRain }) => stateAtRain !== 'finished').length,
    caughtIfPlanGoesOn: caughtAsPlanned(situation, greens, rainMin),
  })
}
