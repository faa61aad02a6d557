import { expect, it } from 'vitest'
import { sandOrder } from './sand-order.ts'

const store = {
  id: 'damp',
  place: 'bay',
  kind: 'damp' as const,
  stockT: 24,
  capacityT: 45,
  lorryT: 20,
  deliveries: [{ date: '2026-08-12', time: '09:30', massT: 20 }],
}

it('counts whole lorry loads for what neither bay nor agreed deliveries cover: 48 - 24 - 20 = 4 t is one lorry', () => {
  const order = sandOrder(store, { lowT: 40, likelyT: 48, highT: 66 })
  expect(order.shortLikelyT).toBeCloseTo(4, 12)
  expect([order.lorriesLikely, order.lorriesHigh]).toEqual([1, 2])
})

it('orders nothing where there is enough', () => {
  const order = sandOrder(store, { lowT: 20, likelyT: 30, highT: 44 })
  expect([order.shortHighT, order.lorriesHigh]).toEqual([0, 0])
})

it('tells what the bay can still take: 45 less 24', () => {
  expect(sandOrder(store, { lowT: 0, likelyT: 0, highT: 0 }).roomT).toBe(21)
})
