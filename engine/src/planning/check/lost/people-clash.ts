import { NEVER } from '../../spans.ts'
import { whoAt } from './duty.ts'
import type { Choice } from './machine-clash.ts'
import type { Open } from './push.ts'
import type { Row } from './row.ts'

/** Most tasks looked at together for too few people. */
const MOST_TOGETHER = 4

const countOf = (who: number): number => {
  let count = 0
  for (let left = who; left !== 0; left &= left - 1) count++
  return count
}

/** Whether tasks need more people at a minute than there are for any of them (Hall 1935). */
const isShort = (row: Row, tasks: readonly number[], minute: number): boolean => {
  const crew = tasks.reduce((sum, task) => sum + (row.tasks[task]?.crew ?? 0), 0)
  const who = tasks.reduce((all, task) => all | whoAt(row.tasks[task]?.duty ?? [], minute), 0)
  return crew > countOf(who)
}

/** Tasks under way together, with the people they need and those who could be on any of them. */
type Together = { readonly tasks: readonly number[]; readonly crew: number; readonly who: number }

const joined = (a: Together, b: Together): Together => ({
  tasks: [...a.tasks, ...b.tasks],
  crew: a.crew + b.crew,
  who: a.who | b.who,
})

/** The tasks that are under way when one begins, it included, if all begin at their soonest; of those that begin together the first has the others with it. It stands first. */
const underWay = (row: Row, { soonStart, soonEnd }: Open, task: number): readonly Together[] => {
  const minute = soonStart[task] ?? 0
  const found: Together[] = []
  for (let other = 0; other < row.tasks.length; other++) {
    const start = soonStart[other] ?? 0
    const isUnder = start < minute ? minute < (soonEnd[other] ?? 0) : start === minute && other >= task
    if (!isUnder) continue
    const { crew, duty } = row.tasks[other] ?? { crew: 0, duty: [] }
    const one = { tasks: [other], crew, who: whoAt(duty, minute) }
    if (other === task) found.unshift(one)
    else found.push(one)
  }
  return found
}

/** The smallest sets of tasks, the first of a list among them, that need more people than there are. */
const shortSets = ([first, ...others]: readonly Together[]): readonly (readonly number[])[] => {
  const short: (readonly number[])[] = []
  let sets = first === undefined ? [] : [{ set: first, next: 0 }]
  for (let size = 1; size <= MOST_TOGETHER && sets.length > 0; size++) {
    const enough = sets.filter(({ set }) => set.crew <= countOf(set.who))
    for (const { set } of sets) if (set.crew > countOf(set.who)) short.push(set.tasks)
    sets = enough.flatMap(({ set, next }) =>
      others.slice(next).map((other, at) => ({ set: joined(set, other), next: next + at + 1 })),
    )
  }
  return short
}

/** First minute after one at which there are enough people for a set of tasks; NEVER where there never are. */
const enoughFrom = (row: Row, set: readonly number[], minute: number): number => {
  let soonest = NEVER
  for (const task of set)
    for (const { fromMin } of row.tasks[task]?.duty ?? [])
      if (fromMin > minute && fromMin < soonest && !isShort(row, set, fromMin)) soonest = fromMin
  return soonest
}

/** A task that would wait, until when, and what time it would have left. */
type Wait = { readonly task: number; readonly fromMin: number; readonly room: number }

/**
 * One of the tasks waits, that with the latest start: until there are people for all of them, or until one of the others is over. For if it began before both, all of them would be under way at its start.
 * Those that have no time for it are left out; that with the most time comes first.
 */
const waitsOf = (
  row: Row,
  { soonEnd, lateStart }: Open,
  set: readonly number[],
  minute: number,
): readonly Wait[] => {
  const enough = enoughFrom(row, set, minute)
  return set
    .map((task) => {
      const over = set.reduce(
        (least, other) => (other === task ? least : Math.min(least, soonEnd[other] ?? 0)),
        enough,
      )
      return { task, fromMin: over, room: (lateStart[task] ?? 0) - over }
    })
    .filter(({ room }) => room >= 0)
    .sort((a, b) => b.room - a.room)
}

/** What the waits of a set leave open: the less, the sooner it is settled. */
const roomOf = (waits: readonly Wait[]): number =>
  waits.length < 2 ? -1 : waits.reduce((sum, { room }) => sum + room, 0)

/** The tightest set of tasks that need more people than there are if all begins at its soonest: one of them waits. Null where there is none. */
export const clashOfPeople = (row: Row, open: Open): readonly Choice[] | null => {
  let best: readonly Wait[] | null = null
  for (let task = 0; task < row.tasks.length; task++)
    for (const set of shortSets(underWay(row, open, task))) {
      const waits = waitsOf(row, open, set, open.soonStart[task] ?? 0)
      if (best === null || roomOf(waits) < roomOf(best)) best = waits
    }
  return (
    best?.map(({ task, fromMin }): Choice => (next) => {
      next.soonStart[task] = fromMin
    }) ?? null
  )
}
