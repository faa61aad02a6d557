import * as v from 'valibot'
import { id, plainDate } from '../course/course.ts'
import { boundBy } from './bound/bound-by.ts'
import { MACHINE_TASKS, OPERATIONS } from './operations.ts'
import { prescription } from './prescription.ts'
import { RULES } from './rules.ts'

/** An instant with its offset, '2026-08-10T06:30:00+01:00'. */
export const instant = v.pipe(
  v.string(),
  v.regex(
    /^\d{4}-\d\d-\d\dT\d\d:\d\d(:\d\d)?(\.\d+)?(Z|[+-]\d\d:\d\d)$/u,
    'a time with its offset such as 2026-08-10T06:30:00+01:00',
  ),
)

/** One task. Never split; `pass` counts coverings from 1; `load` counts the dresser loads of the green from 1, null elsewhere. */
export const planTask = v.object({
  id,
  green: v.nullable(id),
  operation: v.picklist([...OPERATIONS, ...MACHINE_TASKS]),
  pass: v.nullable(v.pipe(v.number(), v.integer(), v.minValue(1))),
  load: v.nullable(v.pipe(v.number(), v.integer(), v.minValue(1))),
  machine: v.nullable(id),
  people: v.array(id),
  start: instant,
  finish: instant,
})

/** When a green changes its work state. */
export const opening = v.object({
  green: id,
  opened: instant,
  cleared: v.nullable(instant),
  dressed: v.nullable(instant),
  finished: v.nullable(instant),
})

/** Why a green is not in the plan; the figures stand in `facts`. Closed. */
export const UNPLANNED_REASONS = [
  'noMachine',
  'noSkill',
  'noWindow',
  'sandShort',
  'tinesShort',
  'servicesNotLocated',
  'notPrescribed',
  'noTimeLeft',
  'skipped',
] as const

/** Why a green is not in the plan. */
export type UnplannedReason = (typeof UNPLANNED_REASONS)[number]

/** What a plan is judged by, in this order; all as small as can be. */
export const objective = v.object({
  unfinishedGreens: v.number(),
  fixtureClashes: v.number(),
  shutGreenDays: v.number(),
  finish: v.nullable(instant),
  overtimeMin: v.number(),
  travelMin: v.number(),
})

/** A wish of the manager that the plan keeps: a green opened on a day and, where `opens` is not null, at that minute. */
export const planPin = v.object({ green: id, date: plainDate, opens: v.nullable(instant) })

/** A whole plan, as `plan make --json` prints it. Version 1. */
export const plan = v.object({
  version: v.literal(1),
  course: v.object({ id, hash: v.string() }),
  prescription,
  start: plainDate,
  seed: v.pipe(v.number(), v.integer()),
  schedules: v.pipe(v.number(), v.integer()),
  assumed: v.array(v.string()),
  tasks: v.array(planTask),
  openings: v.array(opening),
  posts: v.array(
    v.object({
      date: plainDate,
      person: id,
      operations: v.array(v.picklist([...OPERATIONS, ...MACHINE_TASKS])),
      greens: v.array(id),
    }),
  ),
  days: v.array(
    v.object({ date: plainDate, lastSafeStart: v.nullable(instant), finish: v.nullable(instant) }),
  ),
  sand: v.array(
    v.object({ green: id, lowT: v.number(), likelyT: v.number(), highT: v.number(), loads: v.number() }),
  ),
  unplanned: v.array(
    v.object({ green: id, reason: v.picklist(UNPLANNED_REASONS), facts: v.record(v.string(), v.unknown()) }),
  ),
  feasible: v.boolean(),
  objective,
  /** What the manager pinned; absent where nothing is. */
  pins: v.optional(v.array(planPin)),
  /** Rules that the plan breaks because the manager pinned it so, by the checker; absent where there are none. */
  pinRisks: v.optional(
    v.array(
      v.object({
        rule: v.picklist(RULES),
        green: v.nullable(id),
        at: v.nullable(instant),
        by: v.number(),
        tasks: v.array(id),
      }),
    ),
  ),
  /** What no plan of these greens can better, and how far this one may be from it. Absent in plans written by hand and in those of older versions. */
  bound: v.optional(
    v.object({
      finish: instant,
      /** Minutes with anybody on shift from the bound to the finish, in percent of those from the first start to the finish. */
      gapPercent: v.pipe(v.number(), v.minValue(0), v.maxValue(100)),
      by: boundBy,
    }),
  ),
})

/** A plan to be judged: the tasks and what they are for are enough; what else it states is judged too. */
export const planToCheck = v.object({
  ...v.partial(plan, [
    'seed',
    'schedules',
    'assumed',
    'openings',
    'posts',
    'days',
    'sand',
    'unplanned',
    'feasible',
    'objective',
  ]).entries,
})

export type PlanToCheck = Readonly<v.InferOutput<typeof planToCheck>>
export type PlanTask = Readonly<v.InferOutput<typeof planTask>>
export type PlanPin = Readonly<v.InferOutput<typeof planPin>>
export type Opening = Readonly<v.InferOutput<typeof opening>>
export type Objective = Readonly<v.InferOutput<typeof objective>>
export type Plan = Readonly<v.InferOutput<typeof plan>>
