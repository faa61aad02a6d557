import * as v from 'valibot'
import { entryId } from './uuid.ts'

/**
 * Why a server does not take an entry. Closed. The entry stays on its device and is shown as needing attention.
 * - `too-old`: the app that made it is older than this server can read; update the app.
 * - `not-allowed`: the role may not record this, or it stands under another's name.
 * - `bad-body`: envelope or body are not as the kind says, or the id stands for another entry already.
 * - `too-large`: longer than `ENTRY_MAX_LENGTH`.
 * - `clock`: its time lies more than a day ahead of the server's clock, or the clock of the sender is off by more than a day.
 */
export const REFUSAL_REASONS = ['too-old', 'not-allowed', 'bad-body', 'too-large', 'clock'] as const

/** Why a server does not take an entry. */
export type RefusalReason = (typeof REFUSAL_REASONS)[number]

/** One refused entry. `field` and `expected` say what is wrong, where that can be said. */
export const refusalSchema = v.object({
  id: v.pipe(
    v.string(),
    v.description('The id as it was sent; empty where none was, and `field` then tells which entry'),
  ),
  why: v.picklist(REFUSAL_REASONS),
  field: v.optional(v.pipe(v.string(), v.description('Path of the field that is wrong'))),
  expected: v.optional(v.pipe(v.string(), v.description('What it should be'))),
})

/** One refused entry. */
export type Refusal = Readonly<v.InferOutput<typeof refusalSchema>>

/** What a push answers. `cursor` is the end of the journal; it is no replacement for pulling what lies between. */
export const pushAnswerSchema = v.object({
  accepted: v.pipe(
    v.array(entryId),
    v.readonly(),
    v.description('Ids that are now durable, new or known before'),
  ),
  refused: v.pipe(v.array(refusalSchema), v.readonly()),
  cursor: v.pipe(v.string(), v.description('Where the journal ends now')),
})

/** What a push answers. */
export type PushAnswer = Readonly<v.InferOutput<typeof pushAnswerSchema>>
