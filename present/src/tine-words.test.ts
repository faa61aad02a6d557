import { expect, it } from 'vitest'
import { setsWords, tineName } from './tine-words.ts'
import { IMPERIAL, METRIC } from './units.ts'

it('names a kind of tine by its outside and inside, in the club’s unit: 12.7 mm are half an inch', () => {
  expect(tineName({ holeDiameterMm: 12, coreDiameterMm: 9 }, METRIC)).toBe(
    'Hollow tines, 12 mm (9 mm inside)',
  )
  expect(tineName({ holeDiameterMm: 12.7, coreDiameterMm: 0 }, IMPERIAL)).toBe('Solid tines, 0.5 in')
})

it('counts sets, one of them as one', () => {
  expect([0, 0.25, 1, 2].map(setsWords)).toEqual(['0 sets', '0.25 sets', '1 set', '2 sets'])
})
