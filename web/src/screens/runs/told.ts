import type { HeadingReason, LoadsTold, PassTold, RunsChoice, RunsTold } from '../../compute/runs-told.ts'
import {
  clockFace,
  counted,
  dateAt,
  dayWords,
  decimal,
  headingWords,
  listed,
  taskTodo,
} from '@swardwright/present'
import type { WhereFrom } from '../../state/where-from.ts'

/** What a step with its machine is called. */
export const choiceWords = ({ operation, machine, passes }: RunsChoice): string =>
  `${taskTodo({ operation })}${passes > 1 ? `, ${passes} passes` : ''}: ${machine.name}, ${decimal(machine.widthM, 2)} m`

/** Where the time of a pass comes from. */
export const timeFrom = (told: RunsTold, { passes }: PassTold): WhereFrom => ({
  item: 'passes.time',
  input: {
    runLengthM: passes.runLengthM,
    speedMPerS: told.settings.speedMPerS,
    turns: passes.turns,
    turnS: told.settings.turnS ?? 0,
    betweenM: passes.transferM,
  },
  output: 'timeMin',
})

/** Where the number of strips comes from. */
export const stripsFrom = (told: RunsTold, { extentM }: PassTold): WhereFrom => ({
  item: 'passes.count',
  input: { extentM, widthM: told.settings.widthM, overlapM: told.settings.overlapM },
  output: 'strips',
})

/** Where the sand of a load comes from. */
export const loadFrom = ({ boutM, rateKgPerM2 }: LoadsTold, lengthM: number): WhereFrom => ({
  item: 'dressing.runMass',
  input: { lengthM, boutM, rateKgPerM2 },
  output: 'massKg',
})

const DROPPED: Readonly<Record<string, string>> = {
  lastTime: 'No heading far enough from last time’s was left, so it is not kept',
  slope: 'No heading keeps the slope sideways under the limit',
}

/** How the heading came about, in sentences. */
export const reasonSentences = (
  reason: HeadingReason,
  last: { readonly headingDeg: number; readonly at: string } | null,
  how: { readonly twelveDeg: number; readonly timeMin: number; readonly timeZone: string },
): readonly string[] => {
  const lastWords =
    last === null
      ? 'Nobody has noted yet how it was driven last time'
      : `Last time, ${dayWords(dateAt(last.at, how.timeZone))}, it was driven ${headingWords(last.headingDeg, how.twelveDeg)}`
  const slower =
    reason.bestMin === null || how.timeMin - reason.bestMin < 0.05
      ? []
      : [`It takes ${decimal(how.timeMin - reason.bestMin, 1)} min more than the best heading`]
  const near = reason.isNearLast ? ['That is nearly the same line again'] : []
  return [lastWords, ...near, ...reason.dropped.flatMap((one) => DROPPED[one] ?? []), ...slower]
}

/** Runs as ranges: '3 to 7, 9'. */
export const runRanges = (runs: readonly number[]): string => {
  const ranges: [number, number][] = []
  for (const run of runs) {
    const last = ranges[ranges.length - 1]
    if (last !== undefined && run === last[1] + 1) last[1] = run
    else ranges.push([run, run])
  }
  return listed(ranges.map(([from, to]) => (from === to ? String(from) : `${from} to ${to}`)))
}

/** What to watch on this pass: bunkers at the ends, slope sideways. */
export const careSentences = (pass: PassTold): readonly string[] => [
  ...pass.towards.map(
    ({ place, runs }) =>
      `${place} lies within 3 m of the end of ${runs.length === 1 ? 'run' : 'runs'} ${runRanges(runs)}: stop short and lift on the green side.`,
  ),
  ...(pass.acrossPercent === null
    ? []
    : [
        `The slope is felt ${decimal(pass.acrossPercent, 0)} % sideways on this heading. Keep to the limit on the machine, less on wet grass or with a full hopper.`,
      ]),
]

/** What the slider says. */
export const stepWords = (told: RunsTold, pass: PassTold, drivenTo: number | null): string => {
  const { runs } = pass.passes
  if (drivenTo === null) return `All ${counted(runs.length, 'run', 'runs')}`
  const run = runs[drivenTo - 1]
  const load = told.sand?.loads.find((one) => drivenTo > one.firstRun && drivenTo <= one.lastRun + 1)
  const sand = load === undefined ? '' : `, load ${load.load}`
  return `Run ${drivenTo} of ${runs.length}: ${decimal(run?.lengthM ?? 0, 1)} m${sand}`
}

/** The six lines of the clock face. */
export const clockLines = (
  twelveDeg: number,
): readonly { readonly headingDeg: number; readonly words: string }[] =>
  Array.from({ length: 6 }, (_, hour) => {
    const headingDeg = (hour * 30 + twelveDeg) % 180
    return { headingDeg, words: clockFace(headingDeg, twelveDeg) }
  })
