import {
  courseHash,
  DEFAULT_SCHEDULES,
  makePlan,
  makeSafePlan,
  planRisk,
  whatIf as withChanges,
} from '@swardwright/engine'
import type { Doing } from '../work.ts'

export const risk: Doing<'risk'> = ({ plan, course, weather, wish }) =>
  planRisk(plan, { course, weather }, wish)

export const safePlan: Doing<'safePlan'> = ({ input, wish }) =>
  makeSafePlan({ ...input, courseHash: courseHash(input.course) }, wish, {
    seed: input.seed ?? 1,
    schedules: input.schedules ?? DEFAULT_SCHEDULES,
  })

export const whatIf: Doing<'whatIf'> = ({ input, changes }) =>
  withChanges(input.course, changes, (course) =>
    makePlan({ ...input, course, courseHash: courseHash(course) }),
  )
