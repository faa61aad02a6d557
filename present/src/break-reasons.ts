import type { BodyOf } from '@swardwright/journal'

/** Why a step was broken off, as the journal names it. */
export type BreakReason = BodyOf<'taskStopped'>['why']

/** Why a step is broken off, as the journal names it and as people do: the same words on a phone and on paper. */
export const BREAK_REASONS = [
  { id: 'rain', name: 'Rain' },
  { id: 'machine', name: 'The machine' },
  { id: 'person', name: 'Nobody there to do it' },
  { id: 'dark', name: 'It gets dark' },
  { id: 'other', name: 'Something else' },
] as const satisfies readonly { readonly id: BreakReason; readonly name: string }[]
