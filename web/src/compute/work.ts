import {
  bailOut,
  calculate,
  checkPlanAgainst,
  courseFromCount,
  courseFromCsv,
  courseFromMap,
  courseHash,
  DEFAULT_SCHEDULES,
  deriveOperations,
  makePlan,
  makeSafePlan,
  planRisk,
  readCourse,
  replan,
  readMapFile,
  type BailOut,
  type CalculationError,
  type Course,
  type CourseError,
  type CourseReading,
  type CourseWork,
  type DayFact,
  type MakePlanInput,
  type MapContent,
  type MapFileError,
  type NoWeather,
  type OneMore,
  type Plan,
  type PlanError,
  type PlanRisk,
  type Prescription,
  type Replanned,
  type Result,
  type RiskWish,
  type SafePlan,
  type SituationError,
  type UnknownLike,
  type Violation,
  type WeatherHours,
  whatIf,
  type WhatIf,
  whyTask,
  type WhyTask,
} from '@swardwright/engine'
import { ok } from '@swardwright/engine'
import { chancesOf, climateOf, type Chances, type Climate, type ClimateWanted } from './climate.ts'
import { dayNow, type DayAsk, type DayNow } from './day-now.ts'
import { greenFigures, type GreenFigures } from './figures.ts'
import { originOf, type NumberOrigin } from './origin.ts'
import { problemFor } from './plan-problem.ts'
import { greenRuns } from './runs.ts'
import type { RunsAsk, RunsTold } from './runs-told.ts'
import { courseTotals, type CourseTotals } from './totals.ts'

/** How far the search is. */
export type PlanProgress = { readonly schedules: number; readonly of: number; readonly unfinished: number }

type JobShape<I, O, P = never> = { readonly input: I; readonly output: O; readonly progress: P }

/** Figures for every green, and added up. */
export type Figures = {
  readonly greens: readonly GreenFigures[]
  readonly totals: CourseTotals
  /** Greens that can't be worked, with the reason. */
  readonly excluded: CourseWork['excluded']
}

/** What a course can be made from. */
export type CourseSource =
  | { readonly kind: 'file'; readonly text: string }
  | { readonly kind: 'list'; readonly text: string }
  | { readonly kind: 'count'; readonly greens: number; readonly totalAreaM2: number }

/** Everything the worker can be asked, with what goes in, what comes out, and what it tells on the way. */
export type Work = {
  calculate: JobShape<{ readonly name: string; readonly input: unknown }, Result<unknown, CalculationError>>
  origin: JobShape<{ readonly name: string; readonly input: unknown }, NumberOrigin | null>
  figures: JobShape<
    { readonly course: Course; readonly prescription: Prescription },
    Result<Figures, PlanError>
  >
  plan: JobShape<Omit<MakePlanInput, 'courseHash'>, Result<Plan, PlanError>, PlanProgress>
  check: JobShape<
    { readonly plan: Plan; readonly course: Course; readonly weather: WeatherHours | null },
    Result<readonly Violation[], PlanError>
  >
  climate: JobShape<ClimateWanted, Climate>
  chances: JobShape<Parameters<typeof chancesOf>[0], Chances | null>
  /** A plan made again from any moment and any facts, changed as little as may be. */
  replan: JobShape<
    {
      readonly plan: Plan
      readonly course: Course
      readonly weather: WeatherHours | null
      readonly facts: readonly DayFact[]
      readonly now: string
      readonly hasNewForecast: boolean
    },
    Result<Replanned, PlanError | SituationError>
  >
  /** The day at this minute: the plan made again, and until when the next green may be opened. */
  day: JobShape<DayAsk, Result<DayNow, PlanError | SituationError>>
  /** Rain in so many minutes: who finishes, clears or leaves what. */
  bailOut: JobShape<
    { readonly day: DayAsk; readonly rainInMin: number },
    Result<BailOut, PlanError | SituationError>
  >
  /** Why a task of a plan is where it is. */
  why: JobShape<
    {
      readonly plan: Plan
      readonly course: Course
      readonly weather: WeatherHours | null
      readonly task: string
    },
    WhyTask | null
  >
  /** The chance of a caught green on each day of a plan. */
  risk: JobShape<
    {
      readonly plan: Plan
      readonly course: Course
      readonly weather: WeatherHours | null
      readonly wish: RiskWish
    },
    Result<PlanRisk, PlanError | NoWeather>
  >
  /** A plan that keeps that chance under a level. */
  safePlan: JobShape<
    { readonly input: Omit<MakePlanInput, 'courseHash'>; readonly wish: RiskWish },
    Result<SafePlan, PlanError | NoWeather>
  >
  /** The week as it is and with one thing more, side by side. */
  whatIf: JobShape<
    { readonly input: Omit<MakePlanInput, 'courseHash'>; readonly changes: readonly OneMore[] },
    Result<readonly WhatIf[], PlanError | UnknownLike>
  >
  /** A course file, a list of greens with areas, or a number of greens. */
  readCourse: JobShape<CourseSource, Result<CourseReading, CourseError>>
  /** What a map file holds: GeoJSON, KML, GPX, OpenStreetMap. */
  readMap: JobShape<string, Result<MapContent, MapFileError>>
  /** The runs of one step over one green; null where nothing is prescribed there for a machine. */
  runs: JobShape<RunsAsk, RunsTold | null>
}

const figures = (input: Work['figures']['input']): Work['figures']['output'] => {
  const { course, prescription } = input
  const derived = deriveOperations(course, prescription)
  if (!derived.ok) return derived
  const greens = derived.value.works.map((work) => greenFigures(course, work))
  const kinds = new Map(prescription.groups.map((group) => [group.id, group.sand.kind]))
  return ok({ greens, totals: courseTotals(course, greens, kinds), excluded: derived.value.excluded })
}

const plan = (
  input: Work['plan']['input'],
  onProgress: (progress: PlanProgress) => void,
): Work['plan']['output'] => {
  const of = input.schedules ?? DEFAULT_SCHEDULES
  return makePlan({ ...input, courseHash: courseHash(input.course) }, ({ schedules, best }) =>
    onProgress({ schedules, of, unfinished: best.unfinishedGreens }),
  )
}

/** A course file says so, or calls its features by kind; any other map is read as a map. */
const isCourseFile = (text: string): boolean => /"(?:swardwright|kind)"\s*:/u.test(text)

const courseFrom = (source: CourseSource): Work['readCourse']['output'] => {
  if (source.kind === 'count') return courseFromCount(source)
  if (source.kind === 'list') return courseFromCsv(source.text)
  if (isCourseFile(source.text)) return readCourse(source.text)
  const map = readMapFile(source.text)
  return map.ok ? courseFromMap(map.value) : readCourse(source.text)
}

const planAgain = (input: Work['replan']['input']): Work['replan']['output'] => {
  const { plan: old, course, weather } = input
  const problem = problemFor(old, course, weather)
  return problem.ok ? replan({ ...input, plan: old, problem: problem.value }) : problem
}

const whyOf = ({ plan: old, course, weather, task }: Work['why']['input']): Work['why']['output'] => {
  const problem = problemFor(old, course, weather)
  return problem.ok ? whyTask(problem.value, old, task) : null
}

const bailOutOf = ({ day, rainInMin }: Work['bailOut']['input']): Work['bailOut']['output'] => {
  const problem = problemFor(day.plan, day.course, day.weather)
  return problem.ok ? bailOut({ ...day, problem: problem.value, rainInMin }) : problem
}

/** What runs for each job. */
export const JOBS: {
  readonly [J in keyof Work]: (
    input: Work[J]['input'],
    onProgress: (progress: Work[J]['progress']) => void,
  ) => Work[J]['output']
} = {
  calculate: ({ name, input }) => calculate(name, input),
  origin: ({ name, input }) => originOf(name, input),
  figures,
  plan,
  check: ({ plan, course, weather }) => checkPlanAgainst(plan, { course, weather }),
  replan: planAgain,
  day: dayNow,
  bailOut: bailOutOf,
  why: whyOf,
  risk: ({ plan, course, weather, wish }) => planRisk(plan, { course, weather }, wish),
  safePlan: ({ input, wish }) =>
    makeSafePlan({ ...input, courseHash: courseHash(input.course) }, wish, {
      seed: input.seed ?? 1,
      schedules: input.schedules ?? DEFAULT_SCHEDULES,
    }),
  whatIf: ({ input, changes }) =>
    whatIf(input.course, changes, (course) => makePlan({ ...input, course, courseHash: courseHash(course) })),
  climate: climateOf,
  chances: chancesOf,
  readCourse: courseFrom,
  readMap: readMapFile,
  runs: greenRuns,
}
