import { dateAt, dateRange, dayWords } from '../times.ts'
import { greenStates, type GreenState, type MembersInput, type MembersState } from './green-state.ts'
import { backWords, calledGreen, headline, wordOf } from './words.ts'

/** One green after its work, as the manager watches it. */
export type GreenComingBack = {
  readonly id: string
  /** '7 Long Meadow' */
  readonly called: string
  readonly state: MembersState
  /** 'Recovering' */
  readonly word: string
  /** The day on which it was finished, 'yyyy-mm-dd'; null where it was not, or is back long since. */
  readonly finished: string | null
  /** 'back 20 to 31 Aug'; empty where nothing is waited for. */
  readonly back: string
}

/** How the greens come back: one text for the secretary, and every green in playing order. */
export type ComingBack = { readonly text: string; readonly greens: readonly GreenComingBack[] }

/** When those that are waited for may be back: the first from, the last by. */
const expected = (waiting: readonly GreenState[], today: string): string => {
  const backs = waiting.flatMap(({ back }) => back ?? [])
  const from = backs.map((back) => back.from).toSorted()
  const to = backs.flatMap((back) => back.to ?? []).toSorted()
  const [first, lastFrom, lastTo] = [from[0], from.at(-1), to.at(-1)]
  if (first === undefined || lastFrom === undefined) return ''
  const isSlow = to.length < backs.length || lastTo === undefined
  if (!isSlow && first === lastFrom && to[0] === lastTo) return ` Expected back ${dateRange(first, lastTo)}.`
  const begins = first <= today ? 'may be back any day' : `is expected back from ${dayWords(first)}`
  const ends = isSlow ? `not before ${dayWords(lastFrom)}: growth is slow` : `by ${dayWords(lastTo)}`
  return ` The first ${begins}, the last ${ends}.`
}

/** How the greens come back after the work. Goes by the diary and the settled plan, as the members' page does. */
export const comingBack = (input: MembersInput): ComingBack => {
  const today = dateAt(input.nowMs, input.course.timeZone)
  const states = greenStates(input)
  const waiting = states.filter(({ state, play }) => state === 'recovering' && play === null)
  return {
    text: `${headline(states)}${expected(waiting, today)}`,
    greens: states.map((state) => ({
      id: state.green.id,
      called: calledGreen(state),
      state: state.state,
      word: state.state === 'putOff' && state.play === null ? 'Not finished' : wordOf(state, today),
      finished: state.finished,
      back: state.state === 'recovering' ? backWords(state) : '',
    })),
  }
}
