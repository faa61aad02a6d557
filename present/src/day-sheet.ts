import {
  groupOf,
  HOUR_MS,
  instantOf,
  type Course,
  type Person,
  type Plan,
  type PlanTask,
  type PrescriptionGroup,
  type WeatherHours,
} from '@swardwright/engine'
import { cautionsFor, type Caution } from './cautions.ts'
import { listed } from './numbers.ts'
import { quantityWords } from './units.ts'
import { settingLines } from './sheet/settings-words.ts'
import { visitsOf, type SheetVisit } from './sheet/visits.ts'
import { darkSpans, skyBands } from './sky-hours.ts'
import { clock, dateAt, durationWords, instantMs } from './times.ts'

/** Settings for some of the greens on a sheet. */
export type SheetSettings = { readonly greens: string; readonly lines: readonly string[] }

/** Sand for one green, for whoever dresses it. */
export type SheetSand = { readonly place: string; readonly words: string }

/** A printable day of one person. Words are ready to print; escaping is the printer's. */
export type DaySheet = {
  readonly course: string
  readonly date: string
  readonly personId: string
  readonly person: string
  readonly shift: string
  /** Names of machines in the order of first use. */
  readonly machines: readonly string[]
  readonly visits: readonly SheetVisit[]
  readonly settings: readonly SheetSettings[]
  readonly sand: readonly SheetSand[]
  /** Clock of the last safe start of the day; null when no green is opened. */
  readonly lastSafeStart: string | null
  /** What ends the work, in words: 'rain 15:00, 8.4 mm', 'dark 20:55'. */
  readonly stops: readonly string[]
  readonly breaks: readonly string[]
  readonly cautions: readonly Caution[]
}

/** What sheets are made from. */
export type DaySheetInput = {
  readonly course: Course
  readonly plan: Plan
  readonly weather: WeatherHours | null
  readonly date: string
}

type Greens = { readonly group: PrescriptionGroup; readonly names: readonly string[] }

/** The prescription's groups that these greens belong to, with the names of the greens. */
const groupsFor = ({ course, plan }: DaySheetInput, ids: ReadonlySet<string>): readonly Greens[] => {
  const byGroup = new Map<PrescriptionGroup, string[]>()
  for (const green of course.greens.filter(({ id }) => ids.has(id))) {
    const group = groupOf(plan.prescription, green.id)
    if (group !== undefined) byGroup.set(group, [...(byGroup.get(group) ?? []), green.name])
  }
  return [...byGroup].map(([group, names]) => ({ group, names }))
}

const isDeep = (course: Course, groups: readonly Greens[]): boolean =>
  groups.some(({ group }) =>
    group.chain.some((step) => (step.tines?.depthMm ?? 0) >= course.settings.deepFromMm),
  )

/** Whether work begins before the sun is up. */
const beginsInDark = (course: Course, date: string, firstMs: number): boolean => {
  const midnight = instantOf(date, 0, course.timeZone)
  return darkSpans(course, { fromMs: midnight, toMs: midnight + 12 * HOUR_MS }).some(
    (night) => firstMs < night.toMs,
  )
}

const stopsOf = ({ course, weather, date }: DaySheetInput, firstMs: number): readonly string[] =>
  skyBands(course, weather, { fromMs: firstMs, toMs: instantOf(date, 1440, course.timeZone) })
    .filter((band) => (band.kind === 'rain' || band.kind === 'dusk') && band.fromMs > firstMs)
    .map((band) => band.words)

const sandFor = ({ course, plan }: DaySheetInput, tasks: readonly PlanTask[]): readonly SheetSand[] => {
  const dressed = new Set(tasks.filter((task) => task.operation === 'dress').map((task) => task.green))
  return plan.sand
    .filter((sand) => dressed.has(sand.green))
    .map((sand) => ({
      place: course.greens.find((green) => green.id === sand.green)?.name ?? sand.green,
      words: `${quantityWords('sand', sand.likelyT, course.units)} in ${sand.loads} ${sand.loads === 1 ? 'load' : 'loads'}`,
    }))
}

const sheetFor = (input: DaySheetInput, person: Person, tasks: readonly PlanTask[]): DaySheet => {
  const { course, plan, date } = input
  const visits = visitsOf(course, plan, tasks)
  const operations = new Set(tasks.map((task) => task.operation))
  const greens = new Set(tasks.flatMap((task) => (task.green === null ? [] : [task.green])))
  const groups = groupsFor(input, greens)
  const firstMs = Math.min(...tasks.map((task) => instantMs(task.start)))
  const safe = plan.days.find((day) => day.date === date)?.lastSafeStart ?? null
  const alike = groups.map(({ group, names }) => ({
    names,
    lines: settingLines(group, operations, course.units),
  }))
  return {
    course: course.name,
    date,
    personId: person.id,
    person: person.name,
    shift: `${person.shift.from} to ${person.shift.to}`,
    machines: [...new Set(visits.map((visit) => visit.machine))],
    visits,
    settings: alike
      .filter(({ lines }) => lines.length > 0)
      .map(({ names, lines }) => ({ greens: groups.length === 1 ? 'all greens' : listed(names), lines })),
    sand: sandFor(input, tasks),
    lastSafeStart: safe === null ? null : clock(safe, course.timeZone),
    stops: stopsOf(input, firstMs),
    breaks: person.breaks.map(
      (pause) => `${durationWords(pause.minutes)} between ${pause.earliest} and ${pause.latest}`,
    ),
    cautions: cautionsFor({
      operations: [...operations],
      deep: isDeep(course, groups),
      drySand: groups.some(({ group }) => group.sand.kind === 'kilnDried'),
      early: beginsInDark(course, date, firstMs),
    }),
  }
}

/** The sheets of one day, a person each, in the order of the course's people. Nobody without work gets one. */
export const daySheets = (input: DaySheetInput): readonly DaySheet[] => {
  const { course, plan, date } = input
  const today = plan.tasks.filter((task) => dateAt(task.start, course.timeZone) === date)
  return course.people.flatMap((person) => {
    const tasks = today.filter((task) => task.people.includes(person.id))
    return tasks.length === 0 ? [] : [sheetFor(input, person, tasks)]
  })
}
