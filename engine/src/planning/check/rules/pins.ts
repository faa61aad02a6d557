import type { Facts } from '../facts.ts'
import { greenId } from '../facts.ts'
import type { Finding } from '../finding.ts'
import { parseInstant } from '../instant.ts'
import type { PlanToCheck } from '../read-tasks.ts'
import { wrongFigure } from './figure-finding.ts'

type Pins = NonNullable<PlanToCheck['pins']>

/** How far an opening lies from where it is pinned, minutes; 0 where it is there. */
const offBy = (facts: Facts, pin: Pins[number], openedMin: number): number => {
  const { problem } = facts
  if (pin.opens !== null) return Math.abs(openedMin - (parseInstant(pin.opens) - problem.originMs) / 60_000)
  const day = problem.days.find(({ date }) => date === pin.date)
  // A pin on a day that the problem does not have can't be kept by any opening: it counts the whole way to the horizon.
  if (day === undefined) return problem.horizonMin - openedMin
  if (openedMin < day.startMin) return day.startMin - openedMin
  return openedMin >= day.endMin ? openedMin - day.endMin + 1 : 0
}

/** Rule 24, `pinMoved`: a green that the plan says is pinned is opened on its day and, where one is given, at its minute. A green left out is a matter of `unplanned`. */
export const pinMoved = (facts: Facts, pins: Pins): readonly Finding[] =>
  pins.flatMap((pin): readonly Finding[] => {
    const state = facts.states.find(({ green }) => greenId(facts, green) === pin.green)
    if (state === undefined || state.openedMin === null) return []
    const by = offBy(facts, pin, state.openedMin)
    return by === 0
      ? []
      : [{ rule: 'pinMoved', green: pin.green, atMin: state.openedMin, by, tasks: state.tasks.slice(0, 1) }]
  })

/** Rule 23: `pinRisks` names the rules, green by green, that the pins break. Counts rows missing or too many. */
export const pinRisksWrong = (
  stated: NonNullable<PlanToCheck['pinRisks']>,
  hard: readonly Finding[],
): readonly Finding[] => {
  const key = ({ rule, green }: { readonly rule: string; readonly green: string | null }): string =>
    `${rule} ${green ?? ''}`
  const told = new Set(stated.map(key))
  const found = new Set(hard.filter(({ asPinned }) => asPinned === true).map(key))
  const by =
    [...told].filter((one) => !found.has(one)).length + [...found].filter((one) => !told.has(one)).length
  return by === 0 ? [] : [wrongFigure(by)]
}
