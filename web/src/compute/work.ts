import type {
  BailOut,
  Course,
  CourseError,
  CourseReading,
  CourseWork,
  DayFact,
  MakePlanInput,
  MapContent,
  MapFileError,
  NoWeather,
  OneMore,
  Plan,
  PlanError,
  PlanRisk,
  Prescription,
  Replanned,
  Result,
  RiskWish,
  SafePlan,
  SituationError,
  UnknownLike,
  Violation,
  WeatherHours,
  Weeks,
  WeeksError,
  WeeksProgress,
  WeeksWanted,
  WhatIf,
  WhyTask,
} from '@swardwright/engine'
import type { KeptHistory } from '@swardwright/journal'
import type { ChancesWanted, Chances, Climate, ClimateWanted } from './climate.ts'
import type { DayAsk, DayNow } from './day-now.ts'
import type { GreenFigures } from './figures.ts'
import type { NumberOrigin } from './origin.ts'
import type { RunsAsk, RunsTold } from './runs-told.ts'
import type { CourseTotals } from './totals.ts'

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
  chances: JobShape<ChancesWanted, Chances | null>
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
  /** The weeks that a renovation could take, by past years: the record, or drawn ones where there is none. Each is told as it is done. */
  weeks: JobShape<
    Omit<WeeksWanted, 'past'> & { readonly history: KeptHistory | null },
    Result<Weeks, WeeksError>,
    WeeksProgress
  >
  /** A course file, a list of greens with areas, or a number of greens. */
  readCourse: JobShape<CourseSource, Result<CourseReading, CourseError>>
  /** What a map file holds: GeoJSON, KML, GPX, OpenStreetMap. */
  readMap: JobShape<string, Result<MapContent, MapFileError>>
  /** The runs of one step over one green; null where nothing is prescribed there for a machine. */
  runs: JobShape<RunsAsk, RunsTold | null>
}

/** How a job is done; some tell on the way how far they are. */
export type Doing<J extends keyof Work> = (
  input: Work[J]['input'],
  onProgress: (progress: Work[J]['progress']) => void,
) => Work[J]['output']
