import type { Entry } from '@swardwright/journal'

/** The plain way, which checks nothing: sort, drop what is double, push into a list a kind. */
export const plainReduce = (entries: readonly Entry[]): Readonly<Record<string, readonly unknown[]>> => {
  const seen = new Set<string>()
  const ordered = entries
    .map((entry) => ({ entry, atMs: Date.parse(entry.at) }))
    .sort((a, b) => a.atMs - b.atMs || (a.entry.id < b.entry.id ? -1 : 1))
  return ordered.reduce<Record<string, unknown[]>>((lists, { entry }) => {
    if (seen.has(entry.id)) return lists
    seen.add(entry.id)
    const list = (lists[entry.kind] ??= [])
    list.push({ entry: entry.id, author: entry.author, at: entry.at, value: entry.body })
    return lists
  }, {})
}
