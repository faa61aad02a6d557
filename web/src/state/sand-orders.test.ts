import { expect, it, vi } from 'vitest'
import { readCourse, readPrescription } from '@swardwright/engine'
import { initialState } from '@swardwright/journal'
import { figures, followFigures } from './figures.ts'
import { journal } from './journal.ts'
import { sandOrders } from './sand-orders.ts'

// When the engine answers, and what, is in the hands of the test.
const engine = vi.hoisted(() => ({ answer: (_figures: unknown): void => undefined }))
vi.mock('./compute.ts', () => ({
  compute: () =>
    new Promise((resolve) => {
      engine.answer = resolve
    }),
}))

import demoCourse from '../../../examples/demo-course.geojson?raw'
import demoPrescription from '../../../examples/demo-prescription.json?raw'

it('tells no order of nothing while it is worked out what the prescription takes', async () => {
  const [read, prescription] = [readCourse(demoCourse), readPrescription(demoPrescription)]
  if (!read.ok || !prescription.ok) throw new Error('the demo can’t be read')
  const { course } = read.value
  const [bay] = course.stores
  if (bay === undefined) throw new Error('the demo has no store')
  const stores = [{ ...bay, kind: 'damp' as const, stockT: 10, lorryT: 20, deliveries: [] }]
  const settled = { entry: 'p', author: 'Ada', at: '2026-08-09T18:00:00Z', value: prescription.value }
  followFigures()
  journal.value = {
    ...initialState,
    facts: { ...initialState.facts, course: { ...course, stores }, prescription: settled },
  }
  expect(sandOrders.value).toBeNull()

  // 36 t are needed and 10 t lie there: 26 t are short, two lorries of 20 t.
  const sand = [{ kind: 'damp', lowT: 30, likelyT: 36, highT: 40 }]
  engine.answer({ ok: true, value: { greens: [], totals: { sand } } })
  await vi.waitFor(() => expect(figures.value).not.toBeNull())
  expect(sandOrders.value?.map(({ lorriesLikely }) => lorriesLikely)).toEqual([2])
})
