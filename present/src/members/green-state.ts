import {
  expectedBack,
  groupOf,
  type Course,
  type Effect,
  type ExpectedBack,
  type Green,
  type Plan,
  type WeatherHours,
} from '@swardwright/engine'
import { planClock, type Facts } from '@swardwright/journal'
import { dateAt } from '../times.ts'

/**
 * What members see of a green. `open`: in play, and no work is ahead. `planned`: in play, work is ahead. `working`: its work is today, or begun
 * and not finished. `putOff`: its day is over and the diary says that it was not done. `recovering`: finished and not yet expected back.
 */
export type MembersState = 'open' | 'planned' | 'working' | 'putOff' | 'recovering'

/** How one green stands, as days of the course's calendar. */
export type GreenState = {
  readonly green: Green
  readonly state: MembersState
  /** What the manager has set golfers, where it says more than the state. */
  readonly play: 'onTemporary' | 'shut' | null
  /** The day of its work; null where none is planned. */
  readonly workDay: string | null
  /** The day on which it was finished; null until then. */
  readonly finished: string | null
  /** When it is expected back: from the day it was finished, else from the day planned. */
  readonly back: ExpectedBack | null
}

/** What the page is made from: the record, and the clock and weather to read it by. */
export type MembersInput = {
  readonly course: Course
  readonly facts: Facts
  /** The hours that plans go by; null where none are known. */
  readonly weather: WeatherHours | null
  /** Now, by the clock of the course, epoch milliseconds. */
  readonly nowMs: number
}

/** What the diary says of one green's work. */
type Seen = { readonly begunMs: number | null; readonly finishedMs: number | null }

type SeenOf = { readonly green: (id: string) => Seen; readonly isKept: (date: string) => boolean }

/** Steps and finishes told since the plan began, by green; and on which days anything was told at all. */
const seenIn = ({ course, facts, nowMs }: MembersInput, plan: Plan, settledAt: string): SeenOf => {
  const when = planClock({ plan, settledAt, course, nowMs })
  type Step = Facts['tasksFinished'][number]
  /** Whether this step, in this covering, does that to the green. */
  const does = ({ value }: Step, effect: Effect): boolean =>
    groupOf(plan.prescription, value.green)?.chain.some(
      (step) =>
        step.operation === value.operation &&
        step.effects.includes(effect) &&
        (effect === 'opens' || (value.pass ?? 1) >= step.passes),
    ) === true
  const told = (list: readonly { readonly at: string; readonly value: { readonly green: string } }[]) =>
    list.flatMap(({ at, value }) => {
      const atMs = when(at)
      return atMs === null ? [] : [{ green: value.green, atMs }]
    })
  const steps = [...facts.tasksStarted, ...facts.tasksFinished]
  const begun = told(steps.filter((step) => does(step, 'opens')))
  const finished = told([
    ...facts.greensFinished,
    ...facts.tasksFinished.filter((step) => does(step, 'finishes')),
  ])
  const days = new Set([...told(steps), ...finished].map(({ atMs }) => dateAt(atMs, course.timeZone)))
  const earliest = (list: typeof begun, id: string): number | null =>
    list.reduce<number | null>(
      (first, { green, atMs }) => (green === id ? Math.min(first ?? atMs, atMs) : first),
      null,
    )
  return {
    green: (id) => ({ begunMs: earliest(begun, id), finishedMs: earliest(finished, id) }),
    isKept: (date) => days.has(date),
  }
}

/** What the manager said last of a green, and when. */
const lastPlay = ({ facts }: MembersInput, id: string) =>
  facts.playChanges.findLast(({ value }) => value.green === id) ?? null

/** A green finished so long ago is in play again, whatever nobody wrote down. */
const isOver = (back: ExpectedBack | null, finished: string, today: string): boolean =>
  back === null ? today > finished : back.to !== null && today > back.to

type Work = Pick<GreenState, 'state' | 'workDay' | 'finished' | 'back'>

const NO_WORK: Work = { state: 'open', workDay: null, finished: null, back: null }

/** Whether the diary closes the matter after a green was finished: the manager set it in play again. */
const isSetBack = (input: MembersInput, id: string, finished: string): boolean => {
  const play = lastPlay(input, id)
  if (play === null || play.value.play !== 'inPlay') return false
  // Where the clock of the course is held, entries lie on another one: what was said last stands.
  return input.course.now !== null || dateAt(play.at, input.course.timeZone) >= finished
}

/** A green that the plan in force does not open, finished a little while ago: another plan was settled since. */
const earlierWork = (input: MembersInput, id: string): Work => {
  const { course, facts, weather, nowMs } = input
  const { timeZone } = course
  const prescribed = facts.plan?.value.prescription ?? facts.prescription?.value
  const group = prescribed === undefined ? undefined : groupOf(prescribed, id)
  const last = facts.greensFinished.findLast(({ value }) => value.green === id)
  if (group === undefined || last === undefined) return NO_WORK
  const finished = dateAt(course.now === null ? last.at : nowMs, timeZone)
  const back = expectedBack({ group, finished, weather, timeZone })
  const isOpen = isOver(back, finished, dateAt(nowMs, timeZone)) || isSetBack(input, id, finished)
  return isOpen ? NO_WORK : { state: 'recovering', workDay: null, finished, back }
}

/** The work on one green: what the diary says first, and where it says nothing of that day, what was planned. */
const workOn = (input: MembersInput, plan: Plan, seen: SeenOf, id: string): Work => {
  const opening = plan.openings.find(({ green }) => green === id)
  const group = groupOf(plan.prescription, id)
  if (opening === undefined || group === undefined) return earlierWork(input, id)
  const { course, nowMs, weather } = input
  const { timeZone } = course
  const [today, workDay] = [dateAt(nowMs, timeZone), dateAt(opening.opened, timeZone)]
  const { begunMs, finishedMs } = seen.green(id)
  const plannedMs = opening.finished === null ? null : Date.parse(opening.finished)
  const isTold = seen.isKept(workDay) || begunMs !== null
  const doneMs = finishedMs ?? (plannedMs !== null && plannedMs <= nowMs && !isTold ? plannedMs : null)
  const plannedDone = opening.finished === null ? workDay : dateAt(opening.finished, timeZone)
  const finished = doneMs === null ? null : dateAt(doneMs, timeZone)
  const back = expectedBack({ group, finished: finished ?? plannedDone, weather, timeZone })
  if (finished !== null) {
    const isOpen = isOver(back, finished, today) || isSetBack(input, id, finished)
    return { state: isOpen ? 'open' : 'recovering', workDay, finished, back }
  }
  if (begunMs !== null || workDay === today) return { state: 'working', workDay, finished, back }
  return workDay > today
    ? { state: 'planned', workDay, finished, back }
    : { state: 'putOff', workDay, finished, back: null }
}

/** How each green stands, in playing order. Goes by the plan that was settled, never by a draft. */
export const greenStates = (input: MembersInput): readonly GreenState[] => {
  const { course, facts } = input
  const settled = facts.plan
  const seen = settled === null ? null : seenIn(input, settled.value, settled.at)
  return course.greens
    .toSorted((a, b) => (a.hole ?? 99) - (b.hole ?? 99))
    .map((green): GreenState => {
      const work =
        settled === null || seen === null
          ? earlierWork(input, green.id)
          : workOn(input, settled.value, seen, green.id)
      const play = lastPlay(input, green.id)?.value.play ?? 'inPlay'
      return { green, ...work, play: play === 'inPlay' ? null : play }
    })
}

/** What the manager told members last on this page; null where nothing was told. */
export const membersNotice = ({ noticesSent }: Facts): Facts['noticesSent'][number] | null =>
  noticesSent.findLast(({ value }) => value.audience === 'members' && value.way === 'page') ?? null

/** When anything that the page shows was last written down, epoch milliseconds; null where nothing was. A held clock stands still. */
export const lastToldMs = ({ course, facts, nowMs }: MembersInput): number | null => {
  const notice = membersNotice(facts)
  const lists = [
    facts.tasksStarted,
    facts.tasksFinished,
    facts.greensFinished,
    facts.playChanges,
    notice === null ? [] : [notice],
  ]
  const moments = [
    ...lists.flatMap((list) => list.map(({ at }) => Date.parse(at))),
    ...(facts.plan === null ? [] : [Date.parse(facts.plan.at)]),
  ]
  const last = moments.reduce((a, b) => Math.max(a, b), -Infinity)
  if (last === -Infinity) return null
  return course.now === null ? Math.min(last, nowMs) : nowMs
}
