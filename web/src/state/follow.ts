import { effect } from '@preact/signals'
import { course } from './course.ts'
import { followFigures } from './figures.ts'
import {
  checkShown,
  draft,
  planFailure,
  planFault,
  planning,
  planNow,
  settledPlan,
  shownPlan,
} from './plan.ts'
import { prescription } from './prescription.ts'
import { weather } from './weather.ts'
import { mayRecord } from './access.ts'

/** Keeps what is derived level with what is recorded: figures, a first draft of a plan, and whether the plan shown still holds. Call once. */
export const followFacts = (): void => {
  followFigures()
  effect(() => {
    // Who only reads gets no draft of their own: it would look like the plan.
    const ready = mayRecord.value && course.value !== null && prescription.value !== null
    const none =
      settledPlan.value === null &&
      draft.value === null &&
      planFailure.value === null &&
      planFault.value === null
    if (ready && none && planning.value === null) void planNow()
  })
  effect(() => {
    // Read for the sake of following them.
    void [shownPlan.value, course.value, weather.value]
    checkShown()
  })
}
