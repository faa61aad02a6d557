import {
  addDays,
  climateOfNormals,
  dateOfDay,
  dayNumber,
  fitClimate,
  generateDays,
  HOUR_MS,
  instantOf,
  isoWithOffset,
  localOf,
  OPERATIONS,
  readNormals,
  reasonsOf,
  recordEvapotranspiration,
  STOPS,
  unknownHours,
  weatherOfCourse,
  workableHours,
  type Climate,
  type Course,
  type DailyRecord,
  type WeatherHours,
  type WorkableReason,
} from '@swardwright/engine'
import { calculationErrorWords, gapWords, refusalWords } from '@swardwright/present'
import { BadInput, type Command, type Io } from './command.ts'
import { openCourse, openForecast } from './files.ts'
import { calendarDay, readOptions, required, wholeNumber } from './options.ts'
import { openChecked, openHistory, PLACE_OPTIONS, stationOf, withNegatives } from './weather-files.ts'

const importFile = async (argv: readonly string[], io: Io): Promise<number> => {
  const known = { columns: 'text', json: 'flag' } as const
  const { options, words } = readOptions(argv, known, {
    least: 1,
    most: 1,
    names: 'one FILE of daily weather',
  })
  const { history } = await openHistory(io, words[0] ?? '', options.columns)
  const { days, from, to, gaps, columns } = history
  const refused = history.refused.map((refusal) => ({ row: refusal.row, why: refusalWords(refusal) }))
  if (options.json === true) io.out(JSON.stringify({ days, from, to, gaps, refused, columns }))
  else {
    io.out(`${days} days from ${from} to ${to}: ${columns.join(', ')}`)
    for (const gap of gaps) io.out(gapWords(gap))
    for (const { row, why } of refused) io.out(`row ${row}: ${why}`)
  }
  return refused.length === 0 ? 0 : 1
}

const evapotranspiration = async (argv: readonly string[], io: Io): Promise<number> => {
  const known = { history: 'text', columns: 'text', json: 'flag', ...PLACE_OPTIONS } as const
  const { options } = readOptions(withNegatives(argv), known)
  const path = required('history', options.history)
  const { history, layout } = await openHistory(io, path, options.columns)
  const days = recordEvapotranspiration(history.record, stationOf(path, layout, options)).map(
    ({ date, answer }) => ({ date, etMm: answer?.etMm ?? null, assumed: answer?.assumed ?? [] }),
  )
  if (options.json === true) io.out(JSON.stringify(days))
  else
    for (const { date, etMm, assumed } of days)
      io.out(
        `${date}  ${etMm === null ? 'no temperature' : `${etMm.toFixed(1)} mm`}  ${assumed.join(', ')}`.trimEnd(),
      )
  return 0
}

/** Hours shown when there is no forecast: the day of the course's own clock, or today's where the course has none. */
const withoutForecast = (course: Course): WeatherHours => {
  if (course.now === null)
    throw new BadInput(`${course.name} has no 'now', so there is no day to tell of; give --forecast F`)
  const { date } = localOf(Date.parse(course.now), course.timeZone)
  const startMs = instantOf(date, 0, course.timeZone)
  return unknownHours(
    startMs,
    Math.round((instantOf(addDays(date, 1), 0, course.timeZone) - startMs) / HOUR_MS),
  )
}

const STOP_CODES: ReadonlySet<string> = new Set(STOPS)

/** One hour of one operation: the stops say why not, the cautions what to watch though it can be worked. */
const hourOf = (can: boolean, reasons: readonly WorkableReason[]) => ({
  workable: can,
  because: reasons.filter((reason) => STOP_CODES.has(reason)),
  cautions: reasons.filter((reason) => !STOP_CODES.has(reason)),
})

const workable = async (argv: readonly string[], io: Io): Promise<number> => {
  const { options } = readOptions(argv, { course: 'text', forecast: 'text', json: 'flag' })
  const { course } = await openCourse(io, required('course', options.course))
  const weather = (await openForecast(io, options.forecast)) ?? withoutForecast(course)
  const judged = weatherOfCourse(course)
  if (!judged.ok) throw new BadInput(calculationErrorWords(judged.error))
  const answer = workableHours({ weather, ...judged.value, operations: OPERATIONS })
  const hours = Array.from({ length: answer.hours }, (_, h) => ({
    time: isoWithOffset(answer.startMs + h * HOUR_MS, course.timeZone),
    byOperation: Object.fromEntries(
      [...answer.byOperation].map(([id, { workable: can, reasons }]) => [
        id,
        hourOf(can[h] === 1, reasonsOf(reasons[h] ?? 0)),
      ]),
    ),
  }))
  if (options.json === true) io.out(JSON.stringify({ hours }))
  else
    for (const { time, byOperation } of hours) {
      const stopped = Object.entries(byOperation).filter(([, { workable: can }]) => !can)
      io.out(
        stopped.length === 0
          ? `${time}  all work`
          : `${time}  not ${stopped.map(([id, { because }]) => `${id} (${because.join(', ')})`).join(', ')}`,
      )
    }
  return 0
}

/** Knots in a m/s, and J/cm2 in a MJ/m2: the units of the service layout. */
const KNOTS_PER_M_PER_S = 3600 / 1852
const J_PER_CM2_PER_MJ_PER_M2 = 100

/** Daily weather in the service layout: date, rain mm, maxtp and mintp C, wdsp knots, g_rad J/cm2; an empty cell where there is no figure. */
const csvOf = ({ startDay, days, columns }: DailyRecord): string => {
  const cell = (value: number | undefined, digits: number): string =>
    value === undefined || Number.isNaN(value) ? '' : String(Number(value.toFixed(digits)))
  const scaled = (value: number | undefined, factor: number): number | undefined =>
    value === undefined ? undefined : value * factor
  const rows = Array.from({ length: days }, (_, i) =>
    [
      dateOfDay(startDay + i),
      cell(columns.rainMm[i], 1),
      cell(columns.maxC[i], 1),
      cell(columns.minC[i], 1),
      cell(scaled(columns.windMPerS[i], KNOTS_PER_M_PER_S), 1),
      cell(scaled(columns.radiationMJPerM2[i], J_PER_CM2_PER_MJ_PER_M2), 0),
    ].join(','),
  )
  return ['date,rain,maxtp,mintp,wdsp,g_rad', ...rows].join('\n')
}

const GENERATE_OPTIONS = {
  normals: 'text',
  history: 'text',
  columns: 'text',
  years: 'text',
  seed: 'text',
  from: 'text',
  out: 'text',
  ...PLACE_OPTIONS,
} as const

const climateOf = async (
  io: Io,
  options: { readonly normals?: string; readonly history?: string; readonly columns?: string } & Parameters<
    typeof stationOf
  >[2],
): Promise<Climate> => {
  if ((options.normals === undefined) === (options.history === undefined))
    throw new BadInput('give one of --normals F and --history F')
  if (options.normals !== undefined)
    return climateOfNormals(await openChecked(io, options.normals, readNormals))
  const path = options.history ?? ''
  const { history, layout } = await openHistory(io, path, options.columns)
  return fitClimate(history.record, stationOf(path, layout, options))
}

/** First day of generated weather unless another is asked: a plain year after all records. */
const FIRST_DAY = '2101-01-01'

const generate = async (argv: readonly string[], io: Io): Promise<number> => {
  const { options } = readOptions(withNegatives(argv), GENERATE_OPTIONS)
  const years = wholeNumber('years', required('years', options.years), { min: 1, max: 1000 }) ?? 1
  const seed = wholeNumber('seed', required('seed', options.seed), { min: 0, max: 2 ** 31 - 1 }) ?? 0
  const from = calendarDay('from', options.from ?? FIRST_DAY)
  const start = dayNumber(from)
  const climate = await climateOf(io, options)
  const end = dayNumber(
    `${String(Number(from.slice(0, 4)) + years).padStart(4, '0')}${from.slice(4).replace('02-29', '02-28')}`,
  )
  const text = csvOf(generateDays(climate, start, end - start, seed))
  if (options.out === undefined) io.out(text)
  else await io.writeFile(options.out, `${text}\n`)
  return 0
}

/** Weather from the terminal. */
export const WEATHER_COMMANDS: readonly Command[] = [
  {
    noun: 'weather',
    verb: 'import',
    usage: 'FILE [--columns MAP.json] [--json]',
    summary: 'reads a file of daily weather; tells its gaps and every row refused (then exit 1)',
    run: importFile,
  },
  {
    noun: 'weather',
    verb: 'et',
    usage: '--history FILE [--columns MAP.json] [--latitude D --longitude D --altitude M] [--json]',
    summary: 'reference evapotranspiration of every day, with each fall-back taken',
    run: evapotranspiration,
  },
  {
    noun: 'weather',
    verb: 'workable',
    usage: '--course FILE [--forecast F] [--json]',
    summary: 'which hours each operation can be worked, and why not',
    run: workable,
  },
  {
    noun: 'weather',
    verb: 'generate',
    usage:
      '(--normals F | --history F [--columns MAP.json] [--latitude D --longitude D --altitude M]) --years N --seed S [--from DATE] [--out F]',
    summary: 'draws years of daily weather like those of a record or a table of normals, as CSV',
    run: generate,
  },
]
