import * as v from 'valibot'
import { fail, ok, type Result } from '@swardwright/engine'
import { ENTRY_MAX_LENGTH, entrySchema, type Entry } from './entry.ts'
import { issueFacts } from './issueFacts.ts'
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

const isAhead = (entry: Entry, { nowMs, skewMs }: JudgeContext): boolean =>
  Math.max(Date.parse(entry.at), Date.parse(entry.recordedAt)) > nowMs + CLOCK_AHEAD_MAX_MS ||
  Math.abs(skewMs ?? 0) > CLOCK_AHEAD_MAX_MS

const judgeKind = (entry: Entry, { role, kinds = KINDS }: JudgeContext): Refusal | null => {
  const kind = findKind(kinds, entry.kind)
  const { id } = entry
  if (!(kind?.roles ?? MAY_PUSH_UNKNOWN).includes(role)) return { id, why: 'not-allowed' }
  if (kind !== undefined && entry.version < kind.acceptedFrom) return { id, why: 'too-old' }
  const read = readEntry(entry, kinds)
  if (read.type === 'badBody')
    return { id, why: 'bad-body', field: `body.${read.field}`, expected: read.expected }
  return null
}

/**
 * Whether a server takes an entry as it was sent: the entry without anything foreign in its envelope, or why not.
 * `id` is the id as it was sent, whatever its form, so that the sender finds its entry again.
 */
export const judgeEntry = (
  sent: { readonly id: string } & Readonly<Record<string, unknown>>,
  context: JudgeContext,
): Result<Entry, Refusal> => {
  const { id } = sent
  if (JSON.stringify(sent).length > ENTRY_MAX_LENGTH) return fail({ id, why: 'too-large' })
  const parsed = v.safeParse(entrySchema, sent, { abortEarly: true })
  if (!parsed.success) return fail({ id, why: 'bad-body', ...issueFacts(parsed.issues[0], 'entry') })
  const entry = parsed.output
  if (entry.course !== context.course)
    return fail({ id, why: 'bad-body', field: 'course', expected: context.course })
  if (isAhead(entry, context)) return fail({ id, why: 'clock' })
  const { author = null } = context
  if (author !== null && entry.author !== author)
    return fail({ id, why: 'not-allowed', field: 'author', expected: author })
  const refusal = judgeKind(entry, context)
  return refusal === null ? ok(entry) : fail(refusal)
}
