import type { Plan } from '../../plan.ts'
import { dayOfStart } from '../days.ts'
import { greenId, type Facts, type TaskFact } from '../facts.ts'
import type { Finding } from '../finding.ts'
import { wrongFigure } from './figure-finding.ts'

type Post = Plan['posts'][number]

const sameSet = (a: readonly string[], b: ReadonlySet<string>): boolean =>
  a.length === b.size && new Set(a).size === b.size && a.every((one) => b.has(one))

/** Greens that tasks name, each at its first start. */
const firstStarts = (facts: Facts, tasks: readonly TaskFact[]): ReadonlyMap<string, number> => {
  const starts = new Map<string, number>()
  for (const { green, startMin } of tasks) {
    const id = green === null ? null : greenId(facts, green)
    if (id !== null && !starts.has(id)) starts.set(id, startMin)
  }
  return starts
}

const fits = (facts: Facts, post: Post, tasks: readonly TaskFact[]): boolean => {
  const starts = firstStarts(facts, tasks)
  const inOrder = post.greens.every((green, index) => {
    const before = post.greens[index - 1]
    return before === undefined || (starts.get(before) ?? 0) <= (starts.get(green) ?? 0)
  })
  return (
    inOrder &&
    sameSet(post.greens, new Set(starts.keys())) &&
    sameSet(post.operations, new Set(tasks.map(({ kind }) => kind)))
  )
}

/** Rule 23: `posts` has one row for each date and person with a task, with the kinds of task and the greens in the order of first start. Counts rows. */
export const postsWrong = (facts: Facts, posts: Plan['posts']): readonly Finding[] => {
  const { days, people } = facts.problem
  const rowsOf = new Map<string, readonly Post[]>()
  for (const post of posts) {
    const key = `${post.date} ${post.person}`
    rowsOf.set(key, [...(rowsOf.get(key) ?? []), post])
  }
  const found: Finding[] = []
  for (const [index, person] of people.entries()) {
    for (const [day, { date }] of days.entries()) {
      const tasks = (facts.byPerson[index] ?? []).filter(({ startMin }) => dayOfStart(days, startMin) === day)
      const key = `${date} ${person.id}`
      const rows = rowsOf.get(key) ?? []
      rowsOf.delete(key)
      const wanted = tasks.length > 0 ? 1 : 0
      const off = Math.abs(rows.length - wanted)
      const row = rows[0]
      const wrong = off > 0 ? off : row !== undefined && !fits(facts, row, tasks) ? 1 : 0
      const ids = tasks.map(({ id }) => id)
      if (wrong > 0) found.push(wrongFigure(wrong, { atMin: tasks[0]?.startMin ?? null, tasks: ids }))
    }
  }
  for (const rows of rowsOf.values()) found.push(wrongFigure(rows.length))
  return found
}
