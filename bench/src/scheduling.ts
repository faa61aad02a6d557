import { readFileSync } from 'node:fs'
import { parseArgs } from 'node:util'
import { readProjects, solveProject, type ProjectSet } from '@swardwright/engine'
import { runSet, type SchedulingResult } from './scheduling-run.ts'

const USAGE =
  'bench scheduling FILE --schedules N [--seconds S] [--seed N] [--every K] [--only TEXT] [--json]\n'

type Options = {
  readonly file: string
  readonly schedules: number
  readonly seconds: number | null
  readonly seed: number
  readonly every: number
  readonly only: string
  readonly json: boolean
}

/** A number given as an option; throws a RangeError that names the option and its range. */
const numberOf = (name: string, text: string, least: number, isWhole: boolean): number => {
  const value = Number(text)
  if (
    text.trim() === '' ||
    !Number.isFinite(value) ||
    value < least ||
    (isWhole && !Number.isSafeInteger(value))
  )
    throw new RangeError(
      `--${name} is '${text}'; it must be a ${isWhole ? 'whole ' : ''}number from ${least}`,
    )
  return value
}

const optionsOf = (argv: readonly string[]): Options => {
  const text = { type: 'string' } as const
  const { values, positionals } = parseArgs({
    args: [...argv],
    options: {
      schedules: text,
      seconds: text,
      seed: text,
      every: text,
      only: text,
      json: { type: 'boolean' },
    },
    allowPositionals: true,
  })
  const [file] = positionals
  if (file === undefined || positionals.length > 1) throw new RangeError('give one FILE')
  if (values.schedules === undefined) throw new RangeError('--schedules is missing')
  return {
    file,
    schedules: numberOf('schedules', values.schedules, 1, true),
    seconds: values.seconds === undefined ? null : numberOf('seconds', values.seconds, 0, false),
    seed: numberOf('seed', values.seed ?? '1', 0, true),
    every: numberOf('every', values.every ?? '1', 1, true),
    only: values.only ?? '',
    json: values.json ?? false,
  }
}

/** The file's projects, or a sample of them. Throws a RangeError that says what is wrong with the file. */
const openSet = ({ file, every, only }: Options): ProjectSet => {
  const text = readFileSync(file, 'utf8')
  let parsed: unknown
  try {
    parsed = JSON.parse(text)
  } catch (error) {
    throw new RangeError(`${file} is not JSON`, { cause: error })
  }
  const read = readProjects(parsed)
  if (!read.ok) {
    const { at, expected, found } = read.error
    throw new RangeError(`${file}: ${at} should be ${expected}: ${found}`)
  }
  const { set, instances } = read.value
  return {
    set,
    instances: instances.filter(({ name }) => name.includes(only)).filter((_, at) => at % every === 0),
  }
}

const percent = (value: number | null): string => (value === null ? 'none' : `${value.toFixed(3)} %`)

const table = (result: SchedulingResult): string =>
  [
    ...Object.entries(result.makespans).map(
      ([name, makespan]) => `${name.padEnd(24)} ${makespan ?? 'no schedule'}`,
    ),
    '',
    `set                       ${result.set}`,
    `schedules an instance     ${result.schedules}`,
    `solved                    ${result.solved} of ${Object.keys(result.makespans).length}`,
    `proven without schedule   ${result.infeasibleProven}`,
    `over the critical path    ${percent(result.meanDeviationFromCriticalPathPercent)}`,
    `over the best known       ${percent(result.meanGapToBestKnownPercent)}`,
    `seconds                   ${result.seconds}`,
    `schedules a second        ${result.schedulesPerSecond}`,
    `cut short by --seconds    ${result.cappedInstances}`,
    '',
  ].join('\n')

/** `bench scheduling`: projects of a published set, each searched with the same count of schedules, every answer checked by the independent checker. */
export const run = (argv: readonly string[]): Promise<number> => {
  let options: Options
  let set: ProjectSet
  try {
    options = optionsOf(argv)
    set = openSet(options)
  } catch (error) {
    if (!(error instanceof Error)) throw error
    process.stderr.write(`${error.message}\n${USAGE}`)
    return Promise.resolve(2)
  }
  const result = runSet(set, {
    ...options,
    solve: solveProject,
    onProgress: (line) => process.stderr.write(`${line}\n`),
  })
  if (!result.ok) {
    process.stderr.write(`${result.error}\n`)
    return Promise.resolve(1)
  }
  process.stdout.write(options.json ? `${JSON.stringify(result.value)}\n` : table(result.value))
  return Promise.resolve(0)
}
