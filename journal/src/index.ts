export {
  ENTRY_MAX_LENGTH,
  atMsOf,
  compareEntries,
  courseId,
  entrySchema,
  momentFromMs,
  nextMomentMs,
  storedEntrySchema,
  type Entry,
  type StoredEntry,
} from './entry.ts'
export { UUID_RANDOM_BYTES, entryId, uuidV7, type UuidSource } from './uuid.ts'
export { ROLES, type Role } from './roles.ts'
export {
  REFUSAL_REASONS,
  pushAnswerSchema,
  refusalSchema,
  type PushAnswer,
  type Refusal,
  type RefusalReason,
} from './refusals.ts'
export { CURSOR_START, cursorText, parseCursor, type Cursor } from './cursor.ts'
export { KINDS, KIND_NAMES, findKind, type BodyOf, type KindName, type KnownEntry } from './kinds.ts'
export type { Kind, KindTable, Lift, RawBody } from './kind.ts'
export { PHOTO_PURPOSES } from './recordBodies.ts'
export type { CourseChange } from './courseChange.ts'
export { applyCourseChange, type ChangeError } from './applyCourseChange.ts'
export { compareRead, readEntry, type ReadEntry } from './readEntry.ts'
export { CLOCK_AHEAD_MAX_MS, judgeEntry, type JudgeContext } from './judgeEntry.ts'
export { type Facts, type Problem, type RainSpell, type Recorded, type SetAside } from './facts.ts'
export { planClock, type PlanKnown } from './planClock.ts'
export { PLAYS } from './recordBodies.ts'
export { extend, fold, initialState, type JournalState } from './fold.ts'
export { SNAPSHOT_WORTH, latestByDevice, snapshotOf, stateOf, type Snapshot } from './snapshot.ts'
export type { Strike } from './strikes.ts'
export type { Route, Rule } from './route.ts'
export { BLOB_MAX_BYTES } from './blobRoutes.ts'
export { PASSWORD_LENGTH } from './accessRoutes.ts'
export { issueFacts, type IssueFacts } from './issueFacts.ts'
export { sameJson } from './sameJson.ts'
export {
  ENTRIES_MAX,
  ROUTES,
  isAllowed,
  type RouteArguments,
  type RouteName,
  type RouteOutput,
} from './routes.ts'
export { requestFor, type RouteRequest } from './request.ts'
export {
  WEATHER_KINDS,
  type HistoryOutcome,
  type KeptHistory,
  type WeatherAnswer,
  type WeatherKind,
  type WeatherProblem,
  type WeatherState,
} from './weatherAnswer.ts'
