import { expect, it } from 'vitest'
import { assumedSentence, assumedSentences } from './assumed-words.ts'

const context = { timeZone: 'Europe/London', greenNames: new Map([['g07', 'Long Meadow']]) }

it('words what a plan takes for granted', () => {
  expect(assumedSentence('dry-after:2026-08-16T00:00:00+01:00', context)).toBe(
    'The forecast ends on Sun 16 Aug 00:00; hours after it count as dry.',
  )
  expect(assumedSentence('sand-stock-unknown:kilnDried', context)).toBe(
    'No store of kiln-dried sand is named: there is taken to be enough.',
  )
  expect(assumedSentence('tine-sets-unknown:12/9', context)).toBe(
    'No sets of hollow 12 mm tines (9 mm inside) are in the stores: there are taken to be enough.',
  )
  expect(assumedSentence('tine-sets-unknown:10/0', context)).toBe(
    'No sets of solid 10 mm tines are in the stores: there are taken to be enough.',
  )
  expect(assumedSentence('outline-unknown:g07', context)).toMatch(/^Long Meadow has no outline/u)
})

it.each(['moon-phase', 'dry-after:teatime', 'sand-stock-unknown:pink', 'constructor', 'toString:x'])(
  'shows %s as it is, since it has no words for it',
  (code) => {
    expect(assumedSentence(code, context)).toBe(code)
  },
)

it('gathers greens without an outline', () => {
  expect(assumedSentences(['shed-unknown', 'outline-unknown:a', 'outline-unknown:b'], context)).toEqual([
    'No shed on the map: machines are taken to live in the middle of its greens.',
    '2 greens have no outline: their runs are reckoned on ellipses of the same area.',
  ])
})
