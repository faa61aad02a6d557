import { chainMarks } from '../chain.ts'
import type { Plan } from '../plan.ts'
import type { Rule } from '../rules.ts'
import { dayOfStart } from './days.ts'
import { factsOf, greenId, type Facts } from './facts.ts'
import type { Finding } from './finding.ts'
import { deadlinesOf } from './lost/lost.ts'
import { earliestAt, lostGround, type LostGround } from './lost/left-of-green.ts'
import { keptPins, type KeptPin } from './pins-kept.ts'
import { subtractSpans } from '../spans.ts'
import { sharedMin } from './spans.ts'

/** What the judging of pins asks again and again. */
type PinGround = {
  readonly facts: Facts
  readonly pins: readonly KeptPin[]
  /** The plan with nothing but what was begun before now. */
  readonly alone: () => LostGround
}

const nowOf = ({ problem }: Facts): number => problem.committed?.nowMin ?? 0

const aloneOf = (facts: Facts): LostGround => {
  const nowMin = nowOf(facts)
  const begun = facts.tasks.filter(({ timed, startMin }) => timed && startMin < nowMin)
  return lostGround(factsOf(facts.compiled, begun), nowMin)
}

/** Dry stretches of light on the day of a pin that has no minute. */
const windowsOf = (
  { problem }: Facts,
  { task }: KeptPin,
): readonly { readonly start: number; readonly end: number }[] => {
  const day = problem.days[dayOfStart(problem.days, task.startMin)]
  return day === undefined ? [] : subtractSpans([{ start: day.startMin, end: day.darkMin }], problem.rain)
}

/** Whether a green pinned to a minute can't reach its mark by the deadline of a rule, with every machine and everybody at hand and nothing else to do. */
const isTooLate = ({ facts, alone }: PinGround, pin: KeptPin, which: 0 | 1): boolean => {
  const state = facts.states.find(({ green }) => green === pin.green)
  const limit = state === undefined ? undefined : deadlinesOf(facts, state, state.openedMin ?? 0)[which]
  if (limit === undefined) return false
  const held = { start: pin.task.startMin, end: pin.task.finishMin }
  const ground: LostGround = {
    ...alone(),
    held: (green, step) => (green === pin.green && step === pin.step ? held : null),
  }
  return earliestAt(ground, pin.green, limit.mark) > limit.deadline
}

/** Whether no dry stretch of light of the pinned day is long enough for the green alone. */
const hasNoWindow = ({ facts, alone }: PinGround, pin: KeptPin): boolean => {
  const green = facts.problem.greens[pin.green]
  if (green === undefined) return false
  const marks = chainMarks(green)
  const mark = facts.problem.settings.mayStandDryNight ? marks.clear : marks.finish
  return windowsOf(facts, pin).every(({ start, end }) => {
    const ground: LostGround = {
      ...alone(),
      held: (one, step) => (one === pin.green && step === pin.step ? { start, end: null } : null),
    }
    return earliestAt(ground, pin.green, mark) > end
  })
}

/** Whether another pinned green is in work with this one: what they take from each other is the manager's choice. */
const isBesidePinned = ({ facts, pins }: PinGround, green: number): boolean => {
  const spans = facts.states.flatMap(({ green: one, openedMin, inWorkUntilMin }) =>
    openedMin === null ? [] : [{ green: one, start: openedMin, end: inWorkUntilMin }],
  )
  const own = spans.find((span) => span.green === green)
  return (
    own !== undefined &&
    spans.some(
      (span) =>
        span.green !== green && pins.some((pin) => pin.green === span.green) && sharedMin(span, own) > 0,
    )
  )
}

/** `openInRain`, `sameDay`, `openOvernight`: nobody could have finished it in time from there, or a later step is pinned, or another pinned green takes its hands. */
const isCaughtByPin = (ground: PinGround, pin: KeptPin, rule: Rule): boolean => {
  const green = ground.facts.problem.greens[pin.green]
  if (green === undefined) return false
  const marks = chainMarks(green)
  if (pin.step < marks.open || pin.step > marks.finish) return false
  if (pin.step > marks.open || isBesidePinned(ground, pin.green)) return true
  return pin.isExact ? isTooLate(ground, pin, rule === 'openInRain' ? 0 : 1) : hasNoWindow(ground, pin)
}

/** `tooManyOpen`: the pinned greens and those in work before now are too many without any other. */
const isCrowdOfPins = ({ facts, pins }: PinGround, finding: Finding): boolean => {
  const atMin = finding.atMin ?? 0
  const held = facts.states.filter(
    ({ green, openedMin, inWorkUntilMin }) =>
      openedMin !== null &&
      openedMin <= atMin &&
      inWorkUntilMin > atMin &&
      (openedMin < nowOf(facts) || pins.some((pin) => pin.green === green)),
  )
  return held.length > facts.problem.settings.openGreensCap
}

/** `firstGreenUnchecked`: the green that is opened first is pinned there too, or was opened before now. */
const isFirstFixed = ({ facts, pins }: PinGround, finding: Finding): boolean => {
  const first = facts.timed.find(({ id }) => id === finding.tasks[0])
  return (
    first !== undefined && (first.startMin < nowOf(facts) || pins.some(({ green }) => green === first.green))
  )
}

/** `notWorkable`: the pinned step itself, at its minute; or on its day, where no hour of it would do. */
const isPinnedHour = ({ facts }: PinGround, pin: KeptPin, finding: Finding): boolean => {
  if (finding.tasks[0] !== pin.task.id) return false
  if (pin.isExact) return true
  const step = facts.problem.greens[pin.green]?.steps[pin.step]
  const day = facts.problem.days[dayOfStart(facts.problem.days, pin.task.startMin)]
  if (step === undefined || day === undefined) return false
  const leastMin = Math.min(...step.minutesByMachine.values())
  const spans = facts.compiled.workable.get(step.operation) ?? []
  return !spans.some((span) => sharedMin(span, { start: day.startMin, end: day.endMin }) >= leastMin)
}

const isPriceOf = (ground: PinGround, pin: KeptPin, finding: Finding): boolean => {
  switch (finding.rule) {
    case 'openInRain':
    case 'sameDay':
    case 'openOvernight':
      return isCaughtByPin(ground, pin, finding.rule)
    case 'tooManyOpen':
      return isCrowdOfPins(ground, finding)
    case 'firstGreenUnchecked':
      return isFirstFixed(ground, finding)
    case 'notWorkable':
      return isPinnedHour(ground, pin, finding)
    case 'noSkill':
      return pin.people !== null && finding.tasks[0] === pin.task.id
    default:
      return false
  }
}

/**
 * Marks what is the price of the manager's pins: a broken rule of weather, light, turf or skill on a green whose pin is kept, where the pin can't be had without it. What the plan could
 * have done better under the same pin stays a fault, and so is all that is physically impossible (a machine or a person twice, ways, sand, the chain).
 */
export const markPinned = (
  facts: Facts,
  planPins: NonNullable<Plan['pins']>,
  findings: readonly Finding[],
): readonly Finding[] => {
  if (findings.length === 0 || (planPins.length === 0 && (facts.problem.committed?.pins.length ?? 0) === 0))
    return findings
  const pins = keptPins(facts, planPins)
  let prepared: LostGround | null = null
  const ground: PinGround = { facts, pins, alone: () => (prepared ??= aloneOf(facts)) }
  return findings.map((finding) =>
    pins.some((pin) => greenId(facts, pin.green) === finding.green && isPriceOf(ground, pin, finding))
      ? { ...finding, asPinned: true }
      : finding,
  )
}
