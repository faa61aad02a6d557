import { COURSE_ASSUMPTIONS, courseFromCsv, readCourse, type CourseError } from '@swardwright/engine'
import { describe, expect, test } from 'vitest'
import { courseAssumptionSentence, courseErrorSentence } from './course-words.ts'

const square = (side: number) => [
  [0, 50],
  [side, 50],
  [side, 50 + side],
  [0, 50 + side],
  [0, 50],
]

const green = (properties: object = {}, ring: unknown = square(0.0003)) => ({
  type: 'Feature',
  properties: { kind: 'green', name: 'Kiln', ...properties },
  geometry: { type: 'Polygon', coordinates: [ring] },
})

const file = (features: readonly unknown[], swardwright?: object) =>
  JSON.stringify({ type: 'FeatureCollection', features, swardwright })

const sentenceFor = (text: string): string => {
  const read = readCourse(text)
  if (read.ok) throw new Error('the file was read')
  return courseErrorSentence(read.error)
}

describe('bad course files in words', () => {
  const machine = (facts: object) => file([green()], { version: 1, machines: [facts] })
  const crossing = [
    [0, 50],
    [0.0002, 50.0002],
    [0.0002, 50],
    [0, 50.0002],
    [0, 50],
  ]
  test.each([
    ['not JSON', 'Kiln;400', 'The file is not JSON text.'],
    [
      'not GeoJSON',
      '{}',
      "This is not GeoJSON as a course file needs it: expected an object of type 'FeatureCollection' with a list of features, found an object of type nothing.",
    ],
    [
      'a crossing',
      file([green({}, crossing)]),
      "The outline of 'Kiln' (feature 1) crosses itself near 50.00010 N, 0.00010 E.",
    ],
    [
      'a negative depth',
      file([green({ rootzone: { goodDepthMm: -5 } })]),
      "Out of range: rootzone.goodDepthMm of 'Kiln' (feature 1) should be 0 to 600 mm, found -5.",
    ],
    [
      'an unknown machine',
      machine({ kind: 'plough' }),
      "Not known: swardwright.machines[0].kind is 'plough', and should be one of corer, deepTiner, scarifier, collector, brush, blower, mower, dresser, dragMat, roller, seeder, spreader, sprayer, hose.",
    ],
    [
      'two of one name',
      file([green(), green({ id: 'x' })]),
      "Two greens are called 'Kiln' (green-1 and x); each needs its own name.",
    ],
    ['another version', file([green()], { version: 3 }), "The file's version should be 1: 3."],
    [
      'a bad zone',
      file([green()], { version: 1, timeZone: 'Mars/North' }),
      "The time zone should be one such as Europe/London, found 'Mars/North'.",
    ],
    [
      'a missing name',
      file([green()], { version: 1, people: [{}] }),
      'Missing: swardwright.people[0].name, which should be a text.',
    ],
    [
      'swapped',
      file([green({}, [[1, 90]])]),
      "Out of range: geometry.coordinates[0][0] of 'Kiln' (feature 1) should be [longitude -180 to 180, latitude -85 to 85], found [1, 90] - the two look swapped.",
    ],
    [
      'noise',
      '['.repeat(10_000),
      "The file's brackets nest deeper than 64 at character 65, so it is no file of this program.",
    ],
  ])('%s', (_, text, sentence) => {
    // The engine tells the position of a JSON slip in its own way; the sentence is the same up to it.
    expect(sentenceFor(text).replace(/: it goes wrong at character \d+/u, '')).toBe(sentence)
  })

  test('a bad line of a list of greens is told by its number', () => {
    const read = courseFromCsv('Larkrise;452\nKiln;big')
    if (read.ok) throw new Error('read')
    expect(courseErrorSentence(read.error)).toBe(
      "Wrong: area in line 2 should be an area in m2 such as 452.5, found 'big'.",
    )
  })
})

const where = { feature: 2, name: 'Kiln', path: 'features[2].geometry' }

/** One of each type: the compiler asks for a new one when the union grows. */
const ONE_OF_EACH: { readonly [T in CourseError['type']]: Extract<CourseError, { readonly type: T }> } = {
  tooLarge: { type: 'tooLarge', sizeMB: 31, maxMB: 20 },
  notJson: { type: 'notJson', position: 4 },
  tooDeep: { type: 'tooDeep', maxDepth: 64, position: 64 },
  notGeoJson: { type: 'notGeoJson', expected: 'a collection', received: 'a list' },
  noGreens: { type: 'noGreens' },
  tooMany: { type: 'tooMany', where, what: 'points', max: 5000, received: 6000 },
  wrongVersion: { type: 'wrongVersion', allowed: 1, received: '2' },
  missing: { type: 'missing', where, field: 'areaM2', expected: 'a number' },
  wrongType: { type: 'wrongType', where, field: 'hole', expected: 'a number', received: "'x'" },
  outOfRange: { type: 'outOfRange', where, field: 'areaM2', unit: 'm2', min: 20, max: 5000, received: 4 },
  notAllowed: { type: 'notAllowed', where, field: 'shade', allowed: ['open'], received: "'x'" },
  unknownField: { type: 'unknownField', where, field: 'shde', allowed: ['shade'] },
  notBelow: { type: 'notBelow', where, field: 'fromMm', received: '20', limitField: 'toMm', limit: '10' },
  badTimeZone: { type: 'badTimeZone', received: 'Mars' },
  twoOfOneId: { type: 'twoOfOneId', what: 'machine', id: 'm' },
  twoOfOneName: { type: 'twoOfOneName', name: 'Kiln', ids: ['a', 'b'] },
  unknownReference: { type: 'unknownReference', where, what: 'sandBay', id: 'yard', allowed: ['bay'] },
  unclosedRing: { type: 'unclosedRing', where, gapM: 3.2 },
  selfCrossing: { type: 'selfCrossing', where, lonDeg: -4.9, latDeg: 53.7 },
  sliver: { type: 'sliver', where, meanWidthM: 0.1, minMeanWidthM: 0.25 },
  islandOutside: { type: 'islandOutside', where, lonDeg: -4.9, latDeg: 53.7 },
  coordinateOutOfRange: { type: 'coordinateOutOfRange', where, lon: 50, lat: 120, swapped: true },
  tooFarApart: { type: 'tooFarApart', where, distanceKm: 500, maxKm: 20 },
  areaMismatch: { type: 'areaMismatch', where, statedM2: 700, outlineM2: 500, maxPercent: 25 },
}

const isOneSentence = (text: string): boolean =>
  /^[A-Z'].*\.$/u.test(text) && !/\.\s+[A-Z]/u.test(text) && !/undefined|\[object|  /u.test(text)

test.each(Object.values(ONE_OF_EACH))('$type is exactly one clear sentence', (error) => {
  expect(courseErrorSentence(error)).toSatisfy(isOneSentence)
})

test('every assumption has one sentence, and names greens by name', () => {
  for (const code of COURSE_ASSUMPTIONS)
    expect(courseAssumptionSentence(`${code}:g01:2:3`)).toSatisfy((text) => isOneSentence(String(text)))
  const names = new Map([['g01', 'Larkrise']])
  expect(courseAssumptionSentence('green.shade:g01,g02', names)).toBe('No shade is taken for Larkrise, g02.')
  expect(courseAssumptionSentence('green.shade:all', names)).toBe('No shade is taken for all greens.')
  expect(courseAssumptionSentence('dry-after:2026-08-17')).toBeNull()
})
