export { CATALOGUE, calculate, findItem } from './catalogue/catalogue.ts'
export { runItem } from './catalogue/run.ts'
export {
  addDays,
  instantOf,
  isoWithOffset,
  isTimeZone,
  localOf,
  MINUTE_MS,
  type LocalTime,
} from './time/zone.ts'
export { dateOfDay, dayNumber, dayOfYear } from './time/calendar.ts'
export { HOUR_MS, type WeatherHours } from './weather/hours.ts'
export { sunDay, type SunDay, type SunEvent } from './weather/daylight.ts'
export {
  lonLat,
  planeAt,
  type LocalPoint,
  type LonLat,
  type LonLatError,
  type Plane,
} from './ground/plane.ts'
export {
  distanceM,
  isOnGreen,
  polygonAreaM2,
  polygonCentroid,
  polygonPerimeterM,
  type Polygon,
  type Ring,
} from './ground/polygon.ts'
export { checkedPolygon } from './ground/checked-polygon.ts'
export type { OutlineError } from './ground/outline-error.ts'
export { equivalentEllipse, isPolygon, polygonOf, type AreaShape, type Shape } from './ground/ellipse.ts'
export { passTime, type PassTime, type PassTimeInput } from './ground/pass-time.ts'
export { readForecast, readForecastText, type Forecast, type ForecastError } from './weather/forecast.ts'
export type { Gap } from './weather/forecast-columns.ts'
export {
  course as courseSchema,
  fixture as fixtureSchema,
  green as greenSchema,
  id as idSchema,
  machine as machineSchema,
  person as personSchema,
  place as placeSchema,
  plainDate as plainDateSchema,
  sandStore as sandStoreSchema,
  tineStore as tineStoreSchema,
  settings as settingsSchema,
  unitsWanted as unitsWantedSchema,
  type Course,
  type Fixture,
  type Green,
  type Machine,
  type Person,
  type Place,
  type SandStore,
  type TineStore,
  type Settings,
  type UnitsWanted,
} from './course/course.ts'
export { parseInstant } from './planning/check/instant.ts'
export { tineNeeds, type TineNeed } from './planning/tine-needs.ts'
export { prescription as prescriptionSchema, type Prescription } from './planning/prescription.ts'
export {
  instant as instantSchema,
  plan as planSchema,
  type Plan,
  type PlanPin,
  type PlanTask,
  type PlanToCheck,
} from './planning/plan.ts'
export { OPERATIONS, type Operation } from './planning/operations.ts'
export type { CalculationError } from './catalogue/errors.ts'
export type { Item } from './catalogue/item.ts'
export { fail, ok, type Result } from './result.ts'
export {
  isOperation,
  MACHINE_TASKS,
  type Effect,
  type MachineKind,
  type TaskKind,
} from './planning/operations.ts'
export type { BladeSetting, PrescriptionGroup, SandSetting, TineSetting } from './planning/prescription.ts'
export { quantityAt } from './catalogue/run.ts'
export type { Quantity } from './catalogue/quantity.ts'
export { holeAreaMm2, holeShare, unionOfPasses, unionShare, volumeLPerM2 } from './agronomy/holes.ts'
export { grooveShare, grooveWork, type Grooves, type GrooveWork } from './agronomy/grooves.ts'
export { holesPerM2Of, openingOf, type Opening, type Spacing } from './agronomy/spacing.ts'
export { bulkDensityOf } from './agronomy/density.ts'
export { massesTo, percentOf, type Layer, type Masses } from './agronomy/layers.ts'
export { coringRemoval, removedMasses } from './agronomy/coring.ts'
export { scarifyingRemoval } from './agronomy/scarifying.ts'
export {
  loadsOf,
  sandBandLPerM2,
  scaleBand,
  START_FILL_FACTOR,
  type SandBand,
  type SandPlaces,
} from './agronomy/sand-band.ts'
export { dryMassOf, wetMassOf } from './agronomy/sand-moisture.ts'
export { depthMmOf, massKgPerM2Of, rateAsDepthMm, type RateUnit } from './agronomy/sand-rates.ts'
export { growthPotentialOf, type GrassSeason, type GrowthConditions } from './agronomy/growth-curve.ts'
export { driedAtMin, dryingCurve, dryingNeedMm, type LyingSand } from './weather/drying.ts'
export {
  DEFAULT_WEATHER_SETTINGS,
  WEATHER_SETTING_LIST,
  weatherSettings,
  type WeatherSettings,
} from './weather/weather-settings.ts'
export {
  workableHours,
  type OperationHours,
  type WorkableFunction,
  type WorkableHours,
} from './weather/workable.ts'
export {
  REASONS,
  reasonsOf,
  STOPS,
  STOPS_OF,
  type Reason as WorkableReason,
} from './weather/workable-rules.ts'
export { weatherOfCourse, type CourseWeather } from './weather/course-weather.ts'
export { surfaceHours, type SurfaceHours } from './weather/surface.ts'
export { COURSE_ASSUMPTIONS, readAssumedFact, type CourseAssumption } from './course/assumed.ts'
export type { CourseError, CourseThing, CourseWhere } from './course/course-error.ts'
export { courseFile, COURSE_FILE_VERSION } from './course/course-file.ts'
export { readCourse } from './course/read-course.ts'
export type { CourseReading } from './course/assemble-course.ts'
export { writeCourse } from './course/write-course.ts'
export { canonicalJson, courseHash } from './course/course-hash.ts'
export { sha256OfBytes } from './course/sha256.ts'
export { courseFromCount, type RoughClub } from './course/rough-course.ts'
export { courseFromCsv } from './course/course-csv.ts'
export {
  closedShare,
  daysToGrow,
  edgeGrowthByDayMm,
  edgeGrowthMm,
  EDGE_RATE_MM_PER_DAY,
  RATE_SPREAD,
  type ClosureConditions,
  type OpeningKind,
  type RecoveryDay,
} from './recovery/closure-rate.ts'
export {
  darkGreenIndexOf,
  isGreenTurf,
  START_GREEN_THRESHOLDS,
  type GreenThresholds,
  type HueSaturationBrightness,
} from './agronomy/turf-colour.ts'
export { afterSandByMass, afterSandByVolume, sandToHoldMm, sandToReachMm } from './agronomy/organic-change.ts'
export { percentsAfterCoring, type Cored, type Refill } from './agronomy/refill.ts'
export { speedWithoutSlope } from './agronomy/readings.ts'
export { LIMITS, type Limit } from './agronomy/limits.ts'
export { deriveOperations, type CourseWork } from './planning/derive-operations.ts'
export type { GreenWork } from './planning/green-work.ts'
export type { Opened as OpenedByPrescription, SandForGreen } from './planning/sand-for-green.ts'
export {
  checkPlanAgainst,
  DEFAULT_DAYS,
  DEFAULT_SCHEDULES,
  makePlan,
  planProblem,
  type MakePlanInput,
} from './planning/make-plan.ts'
export type { PlanError } from './planning/plan-error.ts'
export { RULES, type Rule, type Violation } from './planning/rules.ts'
export {
  UNPLANNED_REASONS,
  type Opening as PlanOpening,
  type Objective,
  type UnplannedReason,
} from './planning/plan.ts'
export { readPlan, readPrescription } from './planning/read-files.ts'
export { usualPrescription } from './planning/usual-prescription.ts'
export { SOURCES, type SourceId } from './catalogue/sources.ts'
export {
  describeItem,
  describeSchema,
  describeSource,
  type FieldDescription,
  type ItemDescription,
  type SourceDescription,
} from './catalogue/describe-item.ts'
export { DEFAULT_DRAWS, DEFAULT_SEED, type DrawOptions } from './catalogue/uncertain.ts'
export { ANSWER_PERCENTILES } from './catalogue/spread.ts'
export type { ThreePoint } from './catalogue/three-point.ts'
export type { Check, Evidence } from './catalogue/item.ts'
export { randomCourse, type RandomCourse, type RandomWish } from './course/random-course.ts'
export { readHistory, type DayGap, type History, type HistoryError, type Refusal } from './weather/history.ts'
export { ARCHIVE_VARIABLES, readArchive, type Archive, type ArchiveError } from './weather/daily-archive.ts'
export {
  DATE_FORMATS,
  historyMap,
  readHistoryMap,
  serviceLayout,
  type HistoryMap,
  type Layout,
} from './weather/history-map.ts'
export {
  DAILY_COLUMN_NAMES,
  emptyRecord,
  type DailyColumn,
  type DailyRecord,
  type Station,
} from './weather/daily-record.ts'
export { recordEvapotranspiration, type RecordEt } from './weather/record-et.ts'
export { METRIC_UNITS, TYPICAL_MACHINES, TYPICAL_PERSON, type TypicalMachine } from './course/typical.ts'
export {
  compareResults,
  methodDifferences,
  samplingDepthMm,
  type Comparison,
  type ComparisonError,
  type LaboratoryResult,
  type LayerChange,
  type MethodDifference,
} from './agronomy/laboratory.ts'
export {
  bandOf,
  dressed,
  EMPTY_LAYER,
  mergeLayers,
  organicPercentOf,
  profileOf,
  profileThicknessMm,
  sampledAs,
  scaleLayer,
  thicknessMm,
  type DepthBand,
  type ProfileLayer,
  type ProfileState,
} from './agronomy/profile-state.ts'
export { groupOf, machinesFor } from './planning/green-work.ts'
export { clockFace, headingOfHour, type ClockFace } from './ground/clock-face.ts'
export { checkedPassSettings, type PassSettings, type PassSettingsError } from './ground/pass-settings.ts'
export { planPasses, type Passes, type Run } from './ground/passes.ts'
export {
  bestHeading,
  HEADING_SEARCH_ERROR_SHARE,
  type BestHeading,
  type HeadingError,
  type HeadingWish,
} from './ground/best-heading.ts'
export {
  banFromTo,
  bansBroken,
  bansFromLastTimes,
  crossSlopeBan,
  crossSlopePercent,
  type HeadingBan,
} from './ground/heading-ban.ts'
export { angleBetweenDeg } from './ground/heading-frame.ts'
export { coverageOf, type Coverage } from './ground/coverage.ts'
export type { RowOrder } from './ground/row-order.ts'
export { turnLengthM, type TurnStyle } from './ground/turn-length.ts'
export {
  sandRuns,
  type Dresser,
  type DresserLoad,
  type SandRuns,
  type SandRunsError,
} from './ground/sand-runs.ts'
export { gateSettingFor, type GateReading, type GateSettingError } from './ground/gate-setting.ts'
export { outlineFrom, type Outline, type PlacedOutlineError } from './ground/outline.ts'
export { readMapFile } from './ground/map-file-in.ts'
export type {
  FeatureKind,
  MapContent,
  MapFeature,
  MapFileError,
  SkippedFeature,
} from './ground/map-feature.ts'
export {
  readAreaTable,
  type AreaLineError,
  type AreaRow,
  type AreaTable,
  type AreaTableError,
} from './ground/area-table-in.ts'
export { courseFromMap, greensOfMap } from './course/course-from-map.ts'
export { readGreenOutline, type OutlineFacts } from './course/outline.ts'
export { runsTowards } from './ground/room-beyond.ts'
export { greenShape } from './planning/green-shape.ts'
export { workingSpeedMPerS } from './planning/step-minutes.ts'
export { walkedOutline, type WalkedOutline, type WalkError } from './ground/walked-outline.ts'
export { degreesOf, runsToGeoJson, runsToGpx } from './ground/runs-out.ts'
export { rainChance, windowChance } from './weather/ensemble.ts'
export { memberOf } from './weather/members.ts'
export { forecastOfTruth, USUAL_SKILL, type BackTest, type Skill } from './weather/back-test.ts'
export { unknownHours, withSaidRain, type SaidError, type SaidRain } from './weather/hand-typed.ts'
export { hoursOfDays } from './weather/hours-of-days.ts'
export { fitClimate, generateDays } from './weather/generate.ts'
export { climateNormals, climateOfNormals, readNormals, type ClimateNormals } from './weather/normals.ts'
export type { Climate } from './weather/climate.ts'
export {
  drySpells,
  monthStatistics,
  yearRainMm,
  type DrySpells,
  type MonthStatistics,
} from './weather/climate-statistics.ts'
export { deficitSeriesMm, nextDeficitMm, type DrainageClass } from './weather/soil-water.ts'
export { nextGreenDay, PLAIN_SAND_GREEN, type GreenDay, type SandGreen } from './weather/sand-green.ts'
export { limitedGrowth, type LimitedGrowth } from './weather/limited-growth.ts'
export { daysAhead, type DayAhead } from './weather/days-ahead.ts'
export { climateMonths, type ClimateMonth, type DryWindow } from './weather/climate-months.ts'
export { maritimeNormals } from './weather/usual-normals.ts'
export { WEATHER_SETTINGS } from './weather/weather-settings.ts'
export {
  DEFAULT_RISK,
  makeSafePlan,
  planRisk,
  type NoWeather,
  type PlanRisk,
  type RiskWish,
  type SafePlan,
} from './planning/risk/plan-risk.ts'
export { whatIf, type OneMore, type UnknownLike, type WhatIf } from './planning/risk/what-if.ts'
export type { Project } from './planning/project/project.ts'
export type { ProjectFound, ProjectSearch } from './planning/project/found.ts'
export { readProjects, type ProjectInstance, type ProjectSet } from './planning/project/read-projects.ts'
export { checkProject, makespanOf } from './planning/project/check-project.ts'
export { earliestStarts } from './planning/project/critical-path.ts'
export { solveProject } from './planning/project/solve-project.ts'
export { isCleanSchedule } from './planning/check/check.ts'
export { compileProblem } from './planning/check/compile.ts'
export { WEATHER_PORTS } from './planning/make-plan.ts'
export { readProblem } from './planning/read-problem.ts'
export { solve } from './planning/solve/solve.ts'
export { chainMarks } from './planning/chain.ts'
export { lowerBound, type LowerBound } from './planning/bound/lower-bound.ts'
export type { BoundBy } from './planning/bound/bound-by.ts'
export type { BoundFor } from './planning/bound/bound-ground.ts'
export { attendedMin } from './planning/bound/plan-bound.ts'
export type { Problem, ProblemStep, Schedule, ScheduledTask, Span } from './planning/problem.ts'
export { intersectSpans, mergeSpans, subtractSpans } from './planning/spans.ts'
export { HOLDS, whyTask, type Hold, type WhyTask } from './planning/why-here.ts'
export {
  factsFile as factsFileSchema,
  type DayFact,
  type FactKind,
  type FactsFile,
} from './planning/replan/facts.ts'
export type { FactError, FactProblem } from './planning/replan/fact-error.ts'
export { readFacts } from './planning/replan/read-facts.ts'
export { planProblemOf } from './planning/replan/plan-problem.ts'
export {
  replan,
  type CaughtGreen,
  type ReplanCost,
  type Replanned,
  type ReplanInput,
} from './planning/replan/make-replan.ts'
export { shiftOnly } from './planning/replan/shift-only.ts'
export { checkPlanAt } from './planning/replan/check-again.ts'
export type { SituationError } from './planning/replan/situation.ts'
export type { PlanChange } from './planning/replan/changes.ts'
export type { Because } from './planning/replan/because.ts'
export {
  bailOut,
  type BailGreen,
  type BailOut,
  type BailTask,
  type StateAtRain,
} from './planning/replan/bail-out.ts'
export type { BailMode } from './planning/replan/short-chain.ts'
export { lastSafeStartOf } from './planning/replan/safe-starts.ts'
export { lastSafeStartNow } from './planning/replan/safe-start-now.ts'
export type { CaughtState, LostReason } from './planning/check/lost/lost.ts'
export type { Pace } from './planning/pace/learn-paces.ts'
export { disturbanceOf, type Disturbance } from './planning/replan/disturbance.ts'
export { isRecord } from './is-record.ts'
export { expectedBack, type ExpectedBack } from './recovery/expected-back.ts'
export {
  DEFAULT_WEEKS,
  OVERRUN_DAYS,
  reckonWeeks,
  WEEKS_LIMITS,
  type Weeks,
  type WeeksError,
  type WeeksProgress,
  type WeeksWanted,
} from './planning/weeks/reckon-weeks.ts'
export {
  drawnYears,
  firstDaysBetween,
  mondayAfter,
  usualYears,
  type PastWeather,
} from './planning/weeks/past-years.ts'
export { chooseWeeks, type RankedWeek } from './planning/weeks/choose-weeks.ts'
export type { ClashYears, WeekOutlook } from './planning/weeks/outlook.ts'
export type { WeekInYear } from './planning/weeks/week-in-year.ts'
