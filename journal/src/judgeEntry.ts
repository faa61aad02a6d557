import * as v from 'valibot'
import { fail, ok, parseInstant, type Result } from '@swardwright/engine'
import { ENTRY_MAX_LENGTH, entrySchema, momentFromMs, storedEntrySchema, type Entry } from './entry.ts'
import { issueFacts, type IssueFacts } from './issueFacts.ts'
import { KINDS, findKind } from './kinds.ts'
import type { KindTable } from './kind.ts'
import { readEntry } from './readEntry.ts'
import type { Refusal } from './refusals.ts'
import type { Role } from './roles.ts'

/** How far ahead of the server's clock an entry may lie. Behind has no limit: phones are offline for weeks. */
export const CLOCK_AHEAD_MAX_MS = 24 * 60 * 60 * 1000

/** What an entry is judged against. */
export type JudgeContext = {
  /** The course it was pushed to. */
  readonly course: string
  /** The role of the sender. */
  readonly role: Role
  /** The server's clock, epoch milliseconds. */
  readonly nowMs: number
  /** How far the sender's clock is ahead of the server's, ms; null where it did not say. */
  readonly skewMs?: number | null
  /** Who may stand as author: one name, or null where the sender speaks for others. */
  readonly author?: string | null
  /** Table of kinds; the standing one unless told. */
  readonly kinds?: KindTable
}

/** Roles that may push kinds or versions which this server does not know yet. */
const MAY_PUSH_UNKNOWN: readonly Role[] = ['manager', 'deputy']

/** What is wrong with the times of an entry, or null. */
const clockFacts = (entry: Entry, { nowMs, skewMs }: JudgeContext): IssueFacts | null => {
  if (Math.abs(skewMs ?? 0) > CLOCK_AHEAD_MAX_MS)
    return { field: 'sentAt', expected: `within 24 hours of the server’s clock, ${momentFromMs(nowMs)}` }
  const field = (['at', 'recordedAt'] as const).find(
    (one) => parseInstant(entry[one]) > nowMs + CLOCK_AHEAD_MAX_MS,
  )
  const latest = momentFromMs(nowMs + CLOCK_AHEAD_MAX_MS)
  return field === undefined
    ? null
    : { field, expected: `at most 24 hours ahead of the server’s clock: not after ${latest}` }
}

/** The field of an envelope that is neither the sender's nor one that a server adds, so that nothing sent is dropped unsaid. */
const foreignField = (sent: Readonly<Record<string, unknown>>): string | null =>
  Object.keys(sent).find((key) => !(key in storedEntrySchema.entries)) ?? null

const judgeKind = (entry: Entry, { role, kinds = KINDS }: JudgeContext): Refusal | null => {
  const kind = findKind(kinds, entry.kind)
  const { id } = entry
  const allowed = kind?.roles ?? MAY_PUSH_UNKNOWN
  if (!allowed.includes(role))
    return {
      id,
      why: 'not-allowed',
      field: 'kind',
      expected: `one for the role ${role}; ${entry.kind} is for ${allowed.join(', ')}`,
    }
  if (kind !== undefined && entry.version < kind.acceptedFrom)
    return { id, why: 'too-old', field: 'version', expected: `from ${kind.acceptedFrom} to ${kind.version}` }
  const read = readEntry(entry, kinds)
  if (read.type === 'badBody')
    return { id, why: 'bad-body', field: `body.${read.field}`, expected: read.expected }
  return null
}

/**
 * Whether a server takes an entry as it was sent: the entry without what another server had added to its envelope, or why not.
 * `id` is the id as it was sent, whatever its form, so that the sender finds its entry again.
 */
export const judgeEntry = (
  sent: { readonly id: string } & Readonly<Record<string, unknown>>,
  context: JudgeContext,
): Result<Entry, Refusal> => {
  const { id } = sent
  if (JSON.stringify(sent).length > ENTRY_MAX_LENGTH)
    return fail({
      id,
      why: 'too-large',
      field: 'entry',
      expected: `at most ${ENTRY_MAX_LENGTH} characters of JSON`,
    })
  const parsed = v.safeParse(entrySchema, sent, { abortEarly: true })
  if (!parsed.success) return fail({ id, why: 'bad-body', ...issueFacts(parsed.issues[0], 'entry') })
  const entry = parsed.output
  if (entry.course !== context.course)
    return fail({ id, why: 'bad-body', field: 'course', expected: context.course })
  const foreign = foreignField(sent)
  if (foreign !== null) return fail({ id, why: 'bad-body', field: foreign, expected: 'absent' })
  const clock = clockFacts(entry, context)
  if (clock !== null) return fail({ id, why: 'clock', ...clock })
  const { author = null } = context
  if (author !== null && entry.author !== author)
    return fail({ id, why: 'not-allowed', field: 'author', expected: author })
  const refusal = judgeKind(entry, context)
  return refusal === null ? ok(entry) : fail(refusal)
}
