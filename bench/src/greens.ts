import { parseArgs } from 'node:util'
import { engineAtHand } from './greens-engine.ts'
import { runWeek, type WeekResult } from './greens-run.ts'
import { demoWeek, weeksOf, type Week } from './greens-weeks.ts'

const USAGE =
  'bench greens [--schedules N] [--seconds S] [--seed N] [--sizes 4,6,9,18,27,36] [--courses K] [--no-demo] [--no-peer] [--hinted] [--json]\n'

const SIZES = [4, 6, 9, 18, 27, 36]

/** What is printed with `--json`. */
export type GreensReport = {
  readonly schedules: number
  readonly seconds: number
  readonly seed: number
  /** The general engine, or why there is none. */
  readonly peer: string
  readonly weeks: readonly WeekResult[]
  readonly summary: {
    readonly weeks: number
    readonly clean: number
    /** Over all weeks, median. */
    readonly medianGapPercent: number | null
    readonly medianBestGapPercent: number | null
    /** Weeks in which the general engine had the same problem and found a clean plan from nothing; in how many of them it was ahead of us. */
    readonly compared: number
    readonly behind: number
    readonly worstRatio: number | null
    /** Weeks in which it began at our plan; in how many of them it has bettered it. */
    readonly begunAtOurs: number
    readonly bettered: number
    /** Of all those, weeks for which it has proven the optimum; in how many of them we are within 1 %. */
    readonly proven: number
    readonly provenWithin1Percent: number
    readonly schedulesPerSecondBySize: Readonly<Record<string, number>>
  }
}

type Options = {
  readonly schedules: number
  readonly seconds: number
  readonly seed: number
  readonly sizes: readonly number[]
  readonly courses: number
  readonly demo: boolean
  readonly peer: boolean
  readonly hinted: boolean
  readonly json: boolean
}

/** A number given as an option; throws a RangeError that names the option and its range. */
const numberOf = (name: string, text: string, least: number, most: number): number => {
  const value = Number(text)
  if (text.trim() === '' || !Number.isFinite(value) || value < least || value > most)
    throw new RangeError(`--${name} is '${text}'; it must be a number from ${least} to ${most}`)
  return value
}

const wholeOf = (name: string, text: string, least: number, most: number): number => {
  const value = numberOf(name, text, least, most)
  if (!Number.isInteger(value)) throw new RangeError(`--${name} is '${text}'; it must be a whole number`)
  return value
}

const optionsOf = (argv: readonly string[]): Options => {
  const text = { type: 'string' } as const
  const flag = { type: 'boolean' } as const
  const { values } = parseArgs({
    args: [...argv],
    options: {
      schedules: text,
      seconds: text,
      seed: text,
      sizes: text,
      courses: text,
      'no-demo': flag,
      'no-peer': flag,
      hinted: flag,
      json: flag,
    },
  })
  return {
    schedules: wholeOf('schedules', values.schedules ?? '10000000', 1, 10_000_000),
    seconds: numberOf('seconds', values.seconds ?? '4', 0.1, 3600),
    seed: wholeOf('seed', values.seed ?? '1', 0, 2 ** 31 - 1),
    sizes:
      values.sizes === undefined ? SIZES : values.sizes.split(',').map((one) => wholeOf('sizes', one, 1, 36)),
    courses: wholeOf('courses', values.courses ?? '5', 1, 100),
    demo: values['no-demo'] !== true,
    peer: values['no-peer'] !== true,
    hinted: values.hinted ?? false,
    json: values.json ?? false,
  }
}

const median = (values: readonly number[]): number | null =>
  values.length === 0 ? null : (values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? null)

/** The figures over all weeks. */
export const summaryOf = (weeks: readonly WeekResult[]): GreensReport['summary'] => {
  const gaps = (key: 'gapPercent' | 'bestGapPercent'): number[] => weeks.flatMap((week) => week[key] ?? [])
  const beside = weeks.flatMap(({ peer }) => (peer?.ratio == null ? [] : [{ ...peer, ratio: peer.ratio }]))
  const compared = beside.filter(({ begunAtOurs }) => !begunAtOurs)
  const begun = beside.filter(({ begunAtOurs }) => begunAtOurs)
  const proven = beside.filter(({ provenOptimal }) => provenOptimal)
  const sizes = [...new Set(weeks.map(({ greens }) => greens))].toSorted((a, b) => a - b)
  return {
    weeks: weeks.length,
    clean: weeks.filter(({ clean }) => clean).length,
    medianGapPercent: median(gaps('gapPercent')),
    medianBestGapPercent: median(gaps('bestGapPercent')),
    compared: compared.length,
    behind: compared.filter(({ ratio }) => ratio > 1).length,
    worstRatio: compared.length === 0 ? null : Math.max(...compared.map(({ ratio }) => ratio)),
    begunAtOurs: begun.length,
    bettered: begun.filter(({ ratio }) => ratio > 1).length,
    proven: proven.length,
    provenWithin1Percent: proven.filter(({ ratio }) => ratio <= 1.01).length,
    schedulesPerSecondBySize: Object.fromEntries(
      sizes.map((size) => [
        String(size),
        median(weeks.filter(({ greens }) => greens === size).map((week) => week.schedulesPerSecond)) ?? 0,
      ]),
    ),
  }
}

const clock = (minute: number | null): string =>
  minute === null
    ? '-'
    : `d${Math.floor(minute / 1440) + 1} ${String(Math.floor((minute % 1440) / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`

const lineOf = (week: WeekResult): string => {
  const { peer } = week
  const beside =
    peer === null
      ? ''
      : `  peer ${peer.model}${peer.begunAtOurs ? ' begun at ours' : ''} ${peer.status.toLowerCase()} ${clock(peer.finishMin)} bound ${clock(peer.boundMin)} ${peer.seconds} s${peer.ratio === null ? '' : ` ratio ${peer.ratio}`}${peer.clean === false ? ' NOT CLEAN' : ''}`
  return `${week.name.padEnd(10)} ${week.planned}/${week.greens}  finish ${clock(week.finishMin)}  bound ${clock(week.boundMin)} (${week.boundBy.part})  gap ${week.bestGapPercent ?? '-'} %  ${week.schedulesPerSecond}/s${week.clean ? '' : ' NOT CLEAN'}${beside}`
}

const searchAll = async (options: Options, hasPeer: boolean): Promise<readonly WeekResult[]> => {
  const weeks: readonly Week[] = [
    ...(options.demo ? [demoWeek()] : []),
    ...options.sizes.flatMap((size) => weeksOf(size, options.courses)),
  ]
  const results: WeekResult[] = []
  for (const week of weeks)
    for (const isBare of [false, true]) {
      const result = await runWeek(week, options, hasPeer, isBare)
      process.stderr.write(`${lineOf(result)}\n`)
      results.push(result)
    }
  return results
}

/**
 * `bench greens`: the demo and generated weeks, each as it is and bare of ways and fillings; ours beside a general constraint engine in the same run, one core
 * and the same processor time each. Of a bare week its model is full and its plan is checked, and with `--hinted` it begins at ours; of the others it gives a bound.
 */
export const run = async (argv: readonly string[]): Promise<number> => {
  let options: Options
  try {
    options = optionsOf(argv)
  } catch (error) {
    if (!(error instanceof Error)) throw error
    process.stderr.write(`${error.message}\n${USAGE}`)
    return 2
  }
  const loaded = options.peer ? engineAtHand() : 'left out'
  if (typeof loaded === 'string') process.stderr.write(`without a peer: ${loaded}\n`)
  const weeks = await searchAll(options, typeof loaded !== 'string')
  const { schedules, seconds, seed } = options
  const peer = typeof loaded === 'string' ? loaded : loaded.name
  const report: GreensReport = { schedules, seconds, seed, peer, weeks, summary: summaryOf(weeks) }
  process.stdout.write(
    options.json
      ? `${JSON.stringify(report)}\n`
      : `${weeks.map(lineOf).join('\n')}\n${JSON.stringify(report.summary, null, 2)}\n`,
  )
  return weeks.every(({ clean }) => clean) ? 0 : 1
}
