import { expect, it } from 'vitest'
import { holdLease, type LeaseBook } from './turns.ts'

const book = (): LeaseBook => {
  const lines = new Map<string, string>()
  return { getItem: (name) => lines.get(name) ?? null, setItem: (name, text) => void lines.set(name, text) }
}

it('gives the turn to the first page and keeps it there while that page looks again', () => {
  const one = book()
  expect(holdLease(one, 'sync', 'a', 0)).toBe(true)
  expect(holdLease(one, 'sync', 'b', 1_000)).toBe(false)
  expect(holdLease(one, 'sync', 'a', 4_000)).toBe(true)
  expect(holdLease(one, 'sync', 'b', 9_000)).toBe(false)
})

it('hands the turn on once the page that had it has not looked for six seconds', () => {
  const one = book()
  holdLease(one, 'sync', 'a', 0)
  expect(holdLease(one, 'sync', 'b', 6_000)).toBe(true)
  expect(holdLease(one, 'sync', 'a', 6_001)).toBe(false)
})

it('is not held up by a lease from before the clock was set back', () => {
  const one = book()
  holdLease(one, 'sync', 'a', 86_400_000)
  expect(holdLease(one, 'sync', 'b', 0)).toBe(true)
})

it('gives each course turns of its own', () => {
  const one = book()
  holdLease(one, 'sync x', 'a', 0)
  expect(holdLease(one, 'sync y', 'b', 0)).toBe(true)
})
