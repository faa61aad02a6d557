import type { Rule } from '../../rules.ts'
import type { Span } from '../../problem.ts'
import { dayOfFinish, dayOfStart } from '../days.ts'
import { greenId, type Facts } from '../facts.ts'
import type { Finding, RuleCheck } from '../finding.ts'
import { sharedMin, totalSharedMin } from '../spans.ts'
import type { WorkState } from '../work-state.ts'

type Opened = WorkState & { readonly openedMin: number }

const opened = ({ states }: Facts): readonly Opened[] =>
  states.flatMap((state) => (state.openedMin === null ? [] : [{ ...state, openedMin: state.openedMin }]))

const found = (facts: Facts, rule: Rule, state: WorkState, at: { atMin: number; by: number }): Finding => ({
  rule,
  green: greenId(facts, state.green),
  tasks: state.tasks,
  ...at,
})

/** Rule 15, `sameDay`: opened to cleared on one day; cleared to finished too, unless greens may stand a dry night. Counts minutes past midnight. */
export const sameDay: RuleCheck = (facts) =>
  opened(facts).flatMap((state) => {
    const { days, settings } = facts.problem
    const untilMin = settings.mayStandDryNight ? state.unclearedUntilMin : state.inWorkUntilMin
    const day = dayOfStart(days, state.openedMin)
    const midnightMin = days[day]?.endMin
    if (midnightMin === undefined || untilMin <= state.openedMin || dayOfFinish(days, untilMin) <= day) {
      return []
    }
    return [found(facts, 'sameDay', state, { atMin: midnightMin, by: untilMin - midnightMin })]
  })

/** Rule 16, `openInRain`: no rain from opening until finished. Counts the minutes of rain, at the first of them. */
export const openInRain: RuleCheck = (facts) =>
  opened(facts).flatMap((state) => {
    const { rain } = facts.problem
    const inWork = { start: state.openedMin, end: state.inWorkUntilMin }
    const first = rain.find((span) => sharedMin(span, inWork) > 0)
    if (first === undefined) return []
    const atMin = Math.max(first.start, inWork.start)
    return [found(facts, 'openInRain', state, { atMin, by: totalSharedMin(inWork, rain) })]
  })

/** Rule 17, `openOvernight`: not in work after dark; a cleared green may be where the club lets it stand. Counts minutes from dark to sunrise. */
export const openOvernight: RuleCheck = (facts) =>
  opened(facts).flatMap((state) => {
    const { mayStandDryNight } = facts.problem.settings
    const end = mayStandDryNight ? state.unclearedUntilMin : state.inWorkUntilMin
    const caught: Span = { start: state.openedMin, end }
    const nights = facts.compiled.evenings.filter(({ untilMidnight }) => sharedMin(untilMidnight, caught) > 0)
    const first = nights[0]
    if (first === undefined) return []
    const atMin = Math.max(first.untilMidnight.start, state.openedMin)
    const by = totalSharedMin(
      caught,
      nights.map(({ untilSunrise }) => untilSunrise),
    )
    return [found(facts, 'openOvernight', state, { atMin, by })]
  })

/** Rule 20, `tooManyOpen`: never more greens in work at once than the cap. Told for each opening over it; counts greens. */
export const tooManyOpen: RuleCheck = (facts) => {
  const all = opened(facts)
  return all.flatMap((state) => {
    const atOnce = all.filter(
      (other) =>
        other.inWorkUntilMin > state.openedMin &&
        (other.openedMin < state.openedMin ||
          (other.openedMin === state.openedMin && other.green <= state.green)),
    )
    const by = atOnce.length - facts.problem.settings.openGreensCap
    return by > 0 ? [found(facts, 'tooManyOpen', state, { atMin: state.openedMin, by })] : []
  })
}
