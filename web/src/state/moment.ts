import { computed } from '@preact/signals'
import { momentOf } from '../compute/moment.ts'
import { nowMs } from './clock.ts'
import { course } from './course.ts'
import { shownPlan } from './plan.ts'

/** The moment that applies now. */
export const moment = computed(() => momentOf(shownPlan.value, nowMs.value, course.value?.timeZone ?? 'UTC'))
