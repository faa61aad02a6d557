import * as fc from 'fast-check'
import * as v from 'valibot'
import { expect, test } from 'vitest'
import { prescription as prescriptionSchema } from '../planning/prescription.ts'
import { canonicalJson } from './course-hash.ts'
import { course as courseSchema } from './course.ts'
import { randomCourse } from './random-course.ts'
import { readCourse } from './read-course.ts'
import { writeCourse } from './write-course.ts'

const wishes = fc.record({ seed: fc.integer(), greens: fc.integer({ min: 1, max: 36 }) })

test('a random course passes every check of the files, and reading it back gives the same course with nothing assumed', () => {
  fc.assert(
    fc.property(wishes, (wish) => {
      const { course, prescription } = randomCourse(wish)
      expect(v.is(courseSchema, course)).toBe(true)
      expect(v.is(prescriptionSchema, prescription)).toBe(true)
      const read = readCourse(writeCourse(course))
      if (!read.ok) throw new Error(JSON.stringify(read.error))
      expect(canonicalJson(read.value.course)).toBe(canonicalJson(course))
      expect(read.value.assumed.filter((fact) => !fact.startsWith('green.outline'))).toEqual([])
    }),
    { seed: 21, numRuns: 25 },
  )
})

test('the same wish gives the same problem, another seed another', () => {
  const one = randomCourse({ seed: 5, greens: 9 })
  expect(randomCourse({ seed: 5, greens: 9 })).toEqual(one)
  expect(canonicalJson(randomCourse({ seed: 6, greens: 9 }).course)).not.toBe(canonicalJson(one.course))
})

test('a dry week has no rain, a wet one has; the dew point stays under the temperature, nights have no sun', () => {
  for (const seed of [1, 2, 3, 4, 5]) {
    const dry = randomCourse({ seed, greens: 3, weather: 'dry' }).weather
    const wet = randomCourse({ seed, greens: 3, weather: 'wet', days: 10 }).weather
    expect(Math.max(...dry.rainMm)).toBe(0)
    expect(Math.max(...wet.rainMm)).toBeGreaterThanOrEqual(0.2)
    expect(wet.hours).toBe(240)
    for (let h = 0; h < wet.hours; h++) {
      expect(wet.temperatureC[h]).toBeGreaterThan(wet.dewPointC[h] ?? NaN)
      if (h % 24 < 2) expect(wet.radiationWPerM2[h]).toBe(0)
    }
  }
})
