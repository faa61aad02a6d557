import { fail, isRecord, ok } from '@swardwright/engine'
import {
  cursorText,
  judgeEntry,
  momentFromMs,
  readEntry,
  type Entry,
  type PushAnswer,
  type Refusal,
} from '@swardwright/journal'
import type { CourseNaming, JournalStore, Outcome } from '../storage/storage.ts'
import type { Access } from '../access/access.ts'
import { isGood } from '../access/passes.ts'
import { nameKey } from '../storage/people.ts'
import { courseOf, type Context } from './context.ts'
import type { Handler } from './registrar.ts'

const targetOf = (entry: Entry): string | null => {
  const target = entry.kind === 'struck' ? entry.body['entry'] : null
  return typeof target === 'string' ? target : null
}

/**
 * Strikes of the crew that strike what somebody else sent (rule J22). A target that is not here yet is somebody else's too:
 * what comes from one phone comes in order.
 */
const foreignStrikes = async (
  journal: JournalStore,
  entries: readonly Entry[],
  { role, sender }: Access,
): Promise<ReadonlySet<string>> => {
  if (role !== 'crew') return new Set()
  const strikes = entries.flatMap((entry) => {
    const target = targetOf(entry)
    return target === null ? [] : [{ id: entry.id, course: entry.course, target }]
  })
  const [first] = strikes
  if (first === undefined) return new Set()
  const found = await journal.find(
    first.course,
    strikes.map((strike) => strike.target),
  )
  const own = new Set(found.filter((kept) => kept.sender === sender).map((kept) => kept.entry.id))
  const withThem = new Set(entries.map((entry) => entry.id))
  return new Set(
    strikes
      .filter(
        ({ target }) =>
          !own.has(target) && (!withThem.has(target) || found.some((kept) => kept.entry.id === target)),
      )
      .map((strike) => strike.id),
  )
}

/** The name that these entries give their course: the latest. */
const namingOf = (entries: readonly Entry[]): CourseNaming | null => {
  const namings = entries.flatMap((entry) => {
    const read = readEntry(entry)
    if (read.type !== 'known' || read.known.kind !== 'courseChanged') return []
    const names = read.known.body.changes.flatMap((change) =>
      change.part === 'course'
        ? change.value.name
        : change.part === 'facts'
          ? (change.fields.name ?? [])
          : [],
    )
    const name = names.at(-1)
    return name === undefined ? [] : [{ name, atMs: read.atMs, entry: entry.id }]
  })
  return namings.sort((a, b) => a.atMs - b.atMs || (a.entry < b.entry ? -1 : 1)).at(-1) ?? null
}

/** Names under which only their owners write. */
const namesOfPeople = async ({ storage, clock }: Context): Promise<ReadonlySet<string>> => {
  const accounts = (await storage.accounts.list()).filter((account) => account.endedAt === null)
  const devices = (await storage.passes.list()).filter(
    (pass) => pass.kind === 'device' && isGood(pass, clock()),
  )
  return new Set([...accounts, ...devices].map(({ name }) => nameKey(name)))
}

/**
 * Who may stand as author of an entry (rule J30): a person or device only under its own name; a script under any name that is nobody's
 * here, since it records for others; somebody at the machine itself, before there are accounts, under any.
 */
const authorRule = async (
  context: Context,
  access: Access,
  handedOn: boolean,
): Promise<(author: unknown) => string | null> => {
  const { by, name, role } = access
  if (by === 'machine' || name === null) return () => null
  if (handedOn && (role === 'manager' || role === 'deputy')) return () => null
  if (by !== 'token') return () => name
  const taken = await namesOfPeople(context)
  return (author) =>
    typeof author === 'string' && taken.has(nameKey(author)) && author !== name ? name : null
}

type WithId = { readonly id: string } & Readonly<Record<string, unknown>>

const hasId = (sent: unknown): sent is WithId => isRecord(sent) && typeof sent['id'] === 'string'

/** What comes without an id can only be told by its place; the others are taken all the same (rule J20). */
const nameless = (sent: unknown, index: number): Refusal =>
  isRecord(sent)
    ? { id: '', why: 'bad-body', field: `entries.${index}.id`, expected: 'a UUID of version 7 in lower case' }
    : { id: '', why: 'bad-body', field: `entries.${index}`, expected: 'an object' }

const idTaken = (id: string): Refusal => ({
  id,
  why: 'bad-body',
  field: 'id',
  expected: 'an id that does not stand for another entry',
})

const answerOf = (
  entries: readonly Entry[],
  outcomes: readonly Outcome[],
): Pick<PushAnswer, 'accepted' | 'refused'> => ({
  accepted: entries.filter((_, index) => outcomes[index] !== 'differs').map((entry) => entry.id),
  refused: entries.filter((_, index) => outcomes[index] === 'differs').map((entry) => idTaken(entry.id)),
})

/** Takes entries in: judges each on its own, keeps the good ones, answers once they are durable, then tells the open streams. */
export const pushEntries =
  (context: Context): Handler<'pushEntries'> =>
  async ({ params, body, access }) => {
    const course = await courseOf(context, params.course)
    if (!course.ok) return course
    const { journal } = context.storage
    const { role, sender } = access
    if (role === null) throw new Error('the rule of this route lets nobody in without log-in')
    const nowMs = context.clock()
    const skewMs = body.sentAt === undefined ? null : Date.parse(body.sentAt) - nowMs
    const authorFor = await authorRule(context, access, body.handedOn === true)
    const judged = body.entries.map((sent, index) =>
      hasId(sent)
        ? judgeEntry(sent, { course: params.course, role, nowMs, skewMs, author: authorFor(sent['author']) })
        : fail(nameless(sent, index)),
    )
    const fit = judged.flatMap((result) => (result.ok ? [result.value] : []))
    const foreign = await foreignStrikes(journal, fit, access)
    const taken = fit.filter((entry) => !foreign.has(entry.id))
    const receivedAt = momentFromMs(nowMs)
    const arriving = taken.map((entry) => ({ entry, receivedAt, sender, skewMs }))
    const { outcomes, end } = await journal.append(params.course, arriving, namingOf(taken))
    const cursor = cursorText(end)
    if (outcomes.includes('stored')) context.hub.tell(params.course, cursor)
    const answer = answerOf(taken, outcomes)
    const refused: readonly Refusal[] = [
      ...judged.flatMap((result) => (result.ok ? [] : [result.error])),
      ...[...foreign].map((id): Refusal => ({
        id,
        why: 'not-allowed',
        field: 'body.entry',
        expected: 'an entry that was sent with the same access',
      })),
      ...answer.refused,
    ]
    return ok({ accepted: answer.accepted, refused, cursor })
  }
