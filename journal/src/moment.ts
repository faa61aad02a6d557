import * as v from 'valibot'
import { instantSchema, parseInstant } from '@swardwright/engine'

/** An instant that exists: '2026-02-30T10:00:00Z' has the right shape but is no time, and browsers differ on what they make of it. */
export const momentSchema = v.pipe(
  instantSchema,
  v.check((text) => Number.isFinite(parseInstant(text)), 'a time that exists'),
)
