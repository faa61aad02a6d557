export { draw, FACE, part, partsOf, sheet, type Drawing, type DrawingChild } from './drawing.ts'
export { escapeMarkup, toSvgString } from './drawing-text.ts'
export { patternDefinitions, patternFill, PATTERNS, type PatternName } from './patterns.ts'
export {
  paint,
  STEP_PX,
  TARGET_PX,
  TEXT_PX,
  TOKENS,
  TOKEN_NAMES,
  TWINS,
  TWO_COLUMNS_PX,
  type Token,
  type TokenName,
  type Twin,
} from './tokens.ts'
export { tokensCss } from './tokens-css.ts'
export { counted, decimal, fixedDecimal, listed, LOCALE, ordinal, shareWords, yearsOf } from './numbers.ts'
export {
  bandWords,
  bothUnits,
  figureOf,
  fromWantedUnit,
  IMPERIAL,
  inWantedUnit,
  METRIC,
  quantityWords,
  unitMark,
  wantedDecimals,
  type Band,
  type QuantityKind,
} from './units.ts'
export {
  clock,
  clockOfMinute,
  clockFrom,
  clockRange,
  dateAt,
  dateRange,
  dayAndClock,
  dayHeading,
  dayWords,
  durationWords,
  instantMs,
  minutesBetween,
  monthName,
  weekday,
  type Instant,
} from './times.ts'
export { BREAK_REASONS, type BreakReason } from './break-reasons.ts'
export {
  EFFECT_WORDS,
  HAND_LETTER,
  coveringTodo,
  machineLetters,
  MACHINE_WORDS,
  PLAY_WORDS,
  STATE_WORDS,
  taskTodo,
  TASK_WORDS,
  WORK_STATES,
  type TaskWords,
  type WorkState,
} from './operation-words.ts'
export { sectionDrawing } from './section.ts'
export {
  SECTION_STATES,
  type SectionBlades,
  type SectionInput,
  type SectionLayer,
  type SectionSand,
  type SectionState,
  type SectionTines,
} from './section/section-input.ts'
export { calculationErrorWords } from './calculation-words.ts'
export { clockFace, headingWords } from './headings.ts'
export { assumedSentence, assumedSentences, type AssumedContext } from './assumed-words.ts'
export {
  CAUTION_IDS,
  cautionsFor,
  CAUTIONS_BY_TASK,
  CAUTIONS_DEFER,
  type Caution,
  type CautionFacts,
  type CautionId,
} from './cautions.ts'
export { forecastErrorWords } from './forecast-words.ts'
export { planErrorWords } from './plan-error-words.ts'
export {
  backDates,
  backWords,
  clashInShort,
  clashNames,
  clashWords,
  daysLostWords,
  finishedWords,
  growthWords,
  weekSentence,
  weeksErrorWords,
  weeksSummary,
} from './weeks-words.ts'
export { planSummary } from './plan-summary.ts'
export { courseAssumptionSentence, courseErrorSentence } from './course-words.ts'
export { boardHours, boardKey, boardNames, boardSheet } from './board.ts'
export { boardFromPlan, shortGreenName, type PlanBoardInput } from './board-from-plan.ts'
export type {
  BoardBand,
  BoardDay,
  BoardGreen,
  BoardInput,
  BoardPerson,
  BoardSpan,
  BoardState,
  BoardTask,
} from './board/board-input.ts'
export { caughtOn, tightestOn, type Caught, type Tightest } from './board/risk.ts'
export { darkSpans, skyBands, skyHours, type SkyHour } from './sky-hours.ts'
export {
  pinRiskSentences,
  planNames,
  unplannedSentence,
  violationSentence,
  type PlanNames,
} from './plan-words.ts'
export { hourStrip, type HourStripInput, type WorkableBand } from './hour-strip.ts'
export { weekStrip, type WeekStripInput } from './week-strip.ts'
export { sandBar, type SandBarInput } from './sand-bar.ts'
export { courseMap } from './course-map.ts'
export { groundFromCourse } from './map/ground-from-course.ts'
export type { CourseMapInput, MapGreen, MapGround, MapPlace } from './map/map-input.ts'
export {
  daySheets,
  type DaySheet,
  type DaySheetInput,
  type SheetSand,
  type SheetSettings,
} from './day-sheet.ts'
export { daySheetFragment, daySheetsHtml, DAY_SHEET_CSS } from './day-sheet-html.ts'
export { bladeWords, sandWords, settingLines, tineWords } from './sheet/settings-words.ts'
export type { SheetStep, SheetVisit } from './sheet/visits.ts'
export { groundDrawing, type GroundDrawingInput } from './ground-drawing.ts'
export { mapFileErrorSentence, outlineErrorSentence } from './ground-words.ts'
export { outlineDrawing, type OutlineDrawingInput } from './ground-outline.ts'
export {
  archiveErrorWords,
  COLUMN_WORDS,
  gapWords,
  historyErrorWords,
  refusalWords,
} from './history-words.ts'
export { ageWords, fetchedWords, weatherProblemWords } from './weather-words.ts'
export {
  busiestSentence,
  chanceWords,
  dayAgainstLevel,
  dayRiskSentence,
  oneMoreWords,
  riskSourceWords,
  riskSummary,
  whatIfRows,
  whatIfSummary,
} from './risk-words.ts'
export { climateDrawing, type ClimateDrawingInput, type ClimateDrawingMonth } from './climate-drawing.ts'
export type { HourBars } from './hour-bars.ts'
export { stoppedWords, WORKABLE_WORDS, workableDays, type WorkableDay } from './workable-day.ts'
export { riskCurve, type RiskCurveInput } from './risk-curve.ts'
export { whySentences } from './why-words.ts'
export { setsWords, tineName } from './tine-words.ts'
export {
  bailOutSummary,
  bailWord,
  caughtSentence,
  changeSentence,
  replanSummary,
  situationErrorWords,
} from './replan-words.ts'
export { comparePlans, type ComparedRow } from './plan-compare.ts'
export { TIGHT_MIN } from './board/rows.ts'
export { comingBack } from './members/coming-back.ts'
export { membersPage, type MembersPage } from './members/members-page.ts'
export { MEMBERS_NOT_FOUND, MEMBERS_PAGE_CSS, membersFragment, membersHtml } from './members/members-html.ts'
export { membersNotice } from './members/green-state.ts'
export { qrCode } from './qr-code.ts'
