import { expect, it } from 'vitest'
import { KINDS } from '@swardwright/journal'
import { BREAK_REASONS } from './break-reasons.ts'

it('names every reason that the journal takes, each once', () => {
  const taken = KINDS.taskStopped.body.entries.why.options
  expect(BREAK_REASONS.map(({ id }) => id).toSorted()).toEqual([...taken].toSorted())
  expect(new Set(BREAK_REASONS.map(({ name }) => name)).size).toBe(taken.length)
})
