import { expect, it } from 'vitest'
import { tineOrders } from './tine-order.ts'

const TEN = { holeDiameterMm: 10, coreDiameterMm: 8 }
const EIGHT = { holeDiameterMm: 8, coreDiameterMm: 0 }

it('orders whole sets for what is missing: 2.4 worn, 0.5 and 1 in stock, 0.5 to come leaves 0.4, so one', () => {
  const stores = [
    { id: 'a', ...TEN, sets: 0.5, deliveries: [{ date: '2026-08-12', time: '09:30', sets: 0.5 }] },
    { id: 'b', ...TEN, sets: 1, deliveries: [] },
  ]
  expect(tineOrders([{ ...TEN, sets: 2.4, greens: 24 }], stores)).toEqual([
    { ...TEN, needSets: 2.4, greens: 24, haveSets: 1.5, comingSets: 0.5, orderSets: 1, stores },
  ])
})

it('orders nothing where there are enough to the set, and shows kinds that are only asked for or only counted', () => {
  const store = { id: 'a', ...EIGHT, sets: 1, deliveries: [] }
  const rows = tineOrders([{ ...TEN, sets: 1, greens: 12 }], [store])
  expect(rows.map(({ holeDiameterMm, orderSets }) => [holeDiameterMm, orderSets])).toEqual([
    [10, 1],
    [8, 0],
  ])
  const exact = tineOrders([{ ...EIGHT, sets: 1, greens: 12 }], [store])
  expect(exact[0]?.orderSets).toBe(0)
})
