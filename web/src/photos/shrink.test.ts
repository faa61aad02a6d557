import { expect, it } from 'vitest'
import { sizeWithin } from './shrink.ts'

it('a picture is made smaller in its own proportions, never larger, and never nothing', () => {
  // 4032 by 3024 is what a phone of 12 megapixels takes: 1600/4032 of 3024 is 1200.
  expect(sizeWithin(4032, 3024, 1600)).toEqual({ widthPx: 1600, heightPx: 1200 })
  expect(sizeWithin(3024, 4032, 1600)).toEqual({ widthPx: 1200, heightPx: 1600 })
  expect(sizeWithin(640, 480, 1600)).toEqual({ widthPx: 640, heightPx: 480 })
  expect(sizeWithin(9000, 2, 1600)).toEqual({ widthPx: 1600, heightPx: 1 })
})
