import { checkPlanAgainst, courseHash, DEFAULT_SCHEDULES, makePlan } from '@swardwright/engine'
import type { Doing } from '../work.ts'

export const plan: Doing<'plan'> = (input, onProgress) => {
  const of = input.schedules ?? DEFAULT_SCHEDULES
  return makePlan({ ...input, courseHash: courseHash(input.course) }, ({ schedules, best }) =>
    onProgress({ schedules, of, unfinished: best.unfinishedGreens }),
  )
}

export const check: Doing<'check'> = ({ plan: shown, course, weather }) =>
  checkPlanAgainst(shown, { course, weather })
