import type * as v from 'valibot'
import type { Role } from './roles.ts'

/** A body before it is known to be right. */
export type RawBody = Readonly<Record<string, unknown>>

/** Lifts a body of version n to version n + 1. Pure, and never touches what is stored. */
export type Lift = (body: RawBody) => RawBody

/** Everything there is to say about one kind of entry. */
export type Kind<B extends v.GenericSchema = v.GenericSchema> = {
  /** What happened, in the past tense, as a sentence for people. */
  readonly meaning: string
  /** Version that apps write today. A body changes in any way: a new version. */
  readonly version: number
  /** Oldest version that a server still takes from a device; older ones are refused as `too-old`. */
  readonly acceptedFrom: number
  /** Roles that may record it. */
  readonly roles: readonly Role[]
  /** Schema of the body in the version of today. */
  readonly body: B
  /** `lifts[n - 1]` takes a body from version n to n + 1; there are `version - 1`. */
  readonly lifts: readonly Lift[]
  /** A body of today's version that is valid. */
  readonly example: v.InferInput<B>
}

/** Ties a kind's example to its schema; the compiler then checks it. */
export const kind = <B extends v.GenericSchema>(definition: Kind<B>): Kind<B> => definition

/** A table of kinds by name. */
export type KindTable = Readonly<Record<string, Kind>>
