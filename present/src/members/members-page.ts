import { isoWithOffset } from '@swardwright/engine'
import { listed } from '../numbers.ts'
import { dateAt, dayAndClock, dayWords } from '../times.ts'
import {
  greenStates,
  membersNotice,
  lastToldMs,
  type GreenState,
  type MembersInput,
  type MembersState,
} from './green-state.ts'
import { calledGreen, headline, toldOf, whatAndWhy, wordOf } from './words.ts'

/** One green on the members' page. Days are of the course's calendar, 'yyyy-mm-dd'. */
export type MembersGreen = {
  readonly hole: number | null
  readonly name: string
  readonly state: MembersState
  readonly play: 'onTemporary' | 'shut' | null
  readonly workDay: string | null
  readonly finished: string | null
  readonly backFrom: string | null
  readonly backTo: string | null
  /** '7 Long Meadow' */
  readonly called: string
  /** 'Recovering' */
  readonly word: string
  /** 'finished Mon 10 Aug; good again 20 to 31 Aug' */
  readonly told: string
}

/** One day of the plan. */
export type MembersDay = { readonly date: string; readonly heading: string; readonly words: string }

/** Everything on the members' page, in words that are ready to show. Nobody of the crew, no stock and no chance is in it. */
export type MembersPage = {
  readonly course: string
  readonly headline: string
  /** What is done, and why; null while no work is planned or going on. */
  readonly what: string | null
  readonly why: string | null
  /** What the manager wrote to members last; null where nothing was. */
  readonly notice: { readonly words: string; readonly day: string } | null
  readonly greens: readonly MembersGreen[]
  readonly days: readonly MembersDay[]
  /** When any of this was last written down, ISO 8601 with the course's offset; null where nothing was. */
  readonly updatedAt: string | null
  readonly updated: string
}

const greenOf = (state: GreenState, today: string): MembersGreen => ({
  hole: state.green.hole,
  name: state.green.name,
  state: state.state,
  play: state.play,
  workDay: state.workDay,
  finished: state.finished,
  backFrom: state.back?.from ?? null,
  backTo: state.back?.to ?? null,
  called: calledGreen(state),
  word: wordOf(state, today),
  told: toldOf(state, today),
})

/** '1 to 4, 9 and the Practice green': holes by number where they run on, others by name. */
const greensInWords = (states: readonly GreenState[]): string => {
  const runs: { from: number; to: number }[] = []
  for (const { green } of states) {
    const last = runs.at(-1)
    if (green.hole === null) continue
    if (last !== undefined && green.hole === last.to + 1) last.to = green.hole
    else runs.push({ from: green.hole, to: green.hole })
  }
  const holes = runs.flatMap(({ from, to }) =>
    to - from < 2 ? [...new Set([from, to])].map(String) : [`${from} to ${to}`],
  )
  const others = states.flatMap(({ green }) => (green.hole === null ? [green.name] : []))
  return listed([...holes, ...others])
}

const dayStateWords = (states: readonly GreenState[]): string => {
  if (states.every(({ finished }) => finished !== null)) return ', done'
  const late = states.filter(({ state }) => state === 'putOff')
  return late.length === 0 ? '' : `; put off: ${greensInWords(late)}`
}

const daysOf = (states: readonly GreenState[]): readonly MembersDay[] => {
  const dates = [...new Set(states.flatMap(({ workDay }) => workDay ?? []))].toSorted()
  return dates.map((date) => {
    const those = states.filter(({ workDay }) => workDay === date)
    const noun = those.length === 1 && those[0]?.green.hole !== null ? 'green ' : 'greens '
    const word = those.every(({ green }) => green.hole === null) ? '' : noun
    return { date, heading: dayWords(date), words: `${word}${greensInWords(those)}${dayStateWords(those)}` }
  })
}

/** The members' page of a course at a moment. */
export const membersPage = (input: MembersInput): MembersPage => {
  const { course, facts, nowMs } = input
  const { timeZone } = course
  const today = dateAt(nowMs, timeZone)
  const states = greenStates(input)
  const isOn = states.some(({ state }) => state !== 'open')
  const plan = facts.plan?.value ?? null
  const told = isOn && plan !== null ? whatAndWhy(plan.prescription) : null
  const notice = membersNotice(facts)
  const updatedMs = lastToldMs(input)
  return {
    course: course.name,
    headline: headline(states),
    what: told?.what ?? null,
    why: told?.why ?? null,
    notice:
      notice === null
        ? null
        : {
            words: notice.value.words,
            day: dayWords(course.now === null ? dateAt(notice.at, timeZone) : today),
          },
    greens: states.map((state) => greenOf(state, today)),
    days: isOn ? daysOf(states) : [],
    updatedAt: updatedMs === null ? null : isoWithOffset(updatedMs, timeZone),
    updated:
      updatedMs === null ? 'Nothing written down yet' : `Last updated ${dayAndClock(updatedMs, timeZone)}`,
  }
}
