import { computed } from '@preact/signals'
import { spellsOf, type Spell } from '../compute/typed-rain.ts'
import { course } from './course.ts'
import { shownPlan } from './plan.ts'
import { weather } from './weather.ts'

/** Rain, by the weather of now, in the days of the plan shown: hours at or over the club’s limit. */
export const rainOfPlan = computed((): readonly Spell[] => {
  const [plan, hours, known] = [shownPlan.value, weather.value, course.value]
  const last = plan?.days.at(-1)?.date
  if (plan === null || hours === null || known === null || last === undefined) return []
  return spellsOf(hours, { from: plan.start, to: last }, known.timeZone).filter(
    (spell) => spell.mmPerH >= known.settings.rainStopMmPerH,
  )
})
