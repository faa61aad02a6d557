import { describe, expect, test } from 'vitest'
import { COURSE_ASSUMPTIONS } from './assumed.ts'
import type { CourseError } from './course-error.ts'
import { at, fileText, greenFeature, M_PER_DEGREE, RECTANGLE, ring } from './fixtures/small-file.ts'
import { readCourse } from './read-course.ts'
import { writeCourse } from './write-course.ts'

const read = (text: string) => {
  const result = readCourse(text)
  if (!result.ok) throw new Error(JSON.stringify(result.error))
  return result.value
}

const errorOf = (text: string): CourseError => {
  const result = readCourse(text)
  if (result.ok) throw new Error('the file was read')
  return result.error
}

const club = (facts: object) => fileText([greenFeature()], { version: 1, ...facts })

describe('a file of greens alone', () => {
  const { course, assumed } = read(fileText([greenFeature({}, [RECTANGLE])]))

  test('gives a whole course: area from the outline, crew, machines and sand as usual', () => {
    // 20 m x 25 m = 500 m2, the corners laid out by the published lengths of a degree (fixtures/small-file.ts).
    expect(course.greens[0]?.areaM2).toBeCloseTo(500, 1)
    expect(course.greens[0]?.at[0]).toBeCloseTo(at(10, 12.5)[0], 6)
    expect(course.greens[0]?.at[1]).toBeCloseTo(at(10, 12.5)[1], 6)
    expect(course.people).toHaveLength(6)
    expect(course.machines.map(({ kind }) => kind)).toContain('dresser')
    expect(course.stores.map(({ kind }) => kind)).toEqual(['damp', 'kilnDried'])
    expect(course.places.map(({ kind }) => kind)).toEqual(['shed', 'sandBay'])
    // Longitude -4.93 is nearest to hour 0 (15 degrees an hour).
    expect(course.timeZone).toBe('Etc/GMT')
  })

  test('lists every default that was taken, in known codes only', () => {
    const codes = assumed.map((fact) => fact.split(':')[0])
    expect(codes.every((code) => COURSE_ASSUMPTIONS.some((known) => known === code))).toBe(true)
    expect(assumed).toContain('green.organicTests:all')
    expect(assumed).toContain('green.servicesChecked:all')
    expect(assumed).toContain('people.typical:6')
    expect(assumed).toContain('course.timeZone:Etc/GMT')
    expect(assumed.some((fact) => fact.startsWith('green.outline'))).toBe(false)
  })

  test('a stated fact is kept and no longer assumed', () => {
    const stated = read(club({ timeZone: 'Europe/Dublin', people: [{ name: 'Isla', skills: ['core'] }] }))
    expect(stated.course.timeZone).toBe('Europe/Dublin')
    expect(stated.course.people).toHaveLength(1)
    expect(stated.course.people[0]).toMatchObject({ id: 'isla', skills: ['core'], courseSetUpUntil: null })
    expect(stated.assumed.some((fact) => /^(course\.timeZone|people\.typical)/u.test(fact))).toBe(false)
    expect(stated.assumed).toContain('person.typical:isla:shift,overtimeMin,breaks,courseSetUpUntil')
  })

  test('an empty list of machines stays empty: the club has none', () => {
    expect(read(club({ machines: [] })).course.machines).toEqual([])
  })

  test("a machine's own pace is never overruled by usual strokes", () => {
    const [own] = read(club({ machines: [{ kind: 'corer', speedMPerS: 0.5 }] })).course.machines
    expect(own).toMatchObject({ id: 'corer', speedMPerS: 0.5 })
    expect(own?.strokesPerMin).toBeUndefined()
  })
})

describe('areas', () => {
  const point = (properties: object) => ({
    type: 'Feature',
    properties: { kind: 'green', name: 'Kiln', ...properties },
    geometry: { type: 'Point', coordinates: at(100, 100) },
  })

  test('a green may be a point with an area', () => {
    const { course, assumed } = read(fileText([point({ areaM2: 430 })]))
    expect(course.greens[0]).toMatchObject({ areaM2: 430, at: at(100, 100) })
    expect(course.greens[0]?.outline).toBeUndefined()
    expect(assumed).toContain('green.outline:all')
  })

  test('a point without an area is refused', () => {
    expect(errorOf(fileText([point({})]))).toMatchObject({ type: 'missing', field: 'areaM2' })
  })

  test('a stated area within 2 % of the outline is taken, beyond that told, beyond 25 % refused', () => {
    expect(read(fileText([greenFeature({ areaM2: 509 })])).assumed.join()).not.toContain('areaDiffers')
    const told = read(fileText([greenFeature({ id: 'g02', areaM2: 560 })]))
    expect(told.course.greens[0]?.areaM2).toBe(560)
    expect(told.assumed.some((fact) => /^green\.areaDiffers:g02:560:(499\.9|500)/u.test(fact))).toBe(true)
    expect(errorOf(fileText([greenFeature({ areaM2: 700 })]))).toMatchObject({
      type: 'areaMismatch',
      statedM2: 700,
    })
  })

  test('an island is not part of the green', () => {
    const island = ring([5, 5], [5, 10], [10, 10], [10, 5])
    // 500 m2 less 5 m x 5 m.
    expect(read(fileText([greenFeature({}, [RECTANGLE, island])])).course.greens[0]?.areaM2).toBeCloseTo(
      475,
      1,
    )
  })

  test("a bent green's position lies on the green, not in its bay", () => {
    // A U open to the north, 30 m wide, legs 8 m: the centre of gravity (15, 13.9) lies in the bay between x = 8 and x = 22.
    const bent = ring([0, 0], [30, 0], [30, 30], [22, 30], [22, 6], [8, 6], [8, 30], [0, 30])
    const [lon] = read(fileText([greenFeature({}, [bent])])).course.greens[0]?.at ?? [0]
    const eastM = ((lon ?? 0) - at(0, 0)[0]) * M_PER_DEGREE.lon
    expect(eastM < 8 || eastM > 22).toBe(true)
  })
})

describe('ways and slopes', () => {
  const place = (properties: object, geometry: object) => ({ type: 'Feature', properties, geometry })
  const text = fileText([
    greenFeature({ playDeg: 40, slope: { percent: 6, fallDeg: 200 } }),
    place(
      { kind: 'track', id: 'ride', oneWay: true },
      { type: 'LineString', coordinates: [at(0, 0), at(90, 0)] },
    ),
    place(
      { kind: 'noGo', id: 'lawn' },
      { type: 'Polygon', coordinates: [ring([50, 0], [60, 0], [60, 10], [50, 10])] },
    ),
  ])

  test('a one-way track, no-go ground, the line of play and the slope are read, and written back the same', () => {
    const { course, assumed } = read(text)
    expect(course.places.find(({ id }) => id === 'ride')).toMatchObject({ kind: 'track', oneWay: true })
    expect(course.places.find(({ id }) => id === 'lawn')).toMatchObject({ kind: 'noGo' })
    expect(course.greens[0]).toMatchObject({ playDeg: 40, slope: { percent: 6, fallDeg: 200 } })
    expect(read(writeCourse(course, assumed)).course).toEqual(course)
  })

  test('a bearing beyond the circle is refused', () => {
    expect(errorOf(fileText([greenFeature({ playDeg: 400 })]))).toMatchObject({
      type: 'outOfRange',
      max: 360,
    })
  })
})

describe('bad files', () => {
  const bowTie = ring([0, 0], [20, 20], [20, 0], [0, 20])
  const [first = [0, 0], ...rest] = RECTANGLE
  const CASES: readonly (readonly [title: string, text: string, error: object])[] = [
    ['an empty text', '', { type: 'notJson' }],
    ['text that is no JSON', 'Green;Area', { type: 'notJson' }],
    ['JSON that is no GeoJSON', '{"greens":[]}', { type: 'notGeoJson' }],
    ['a list', '[1,2]', { type: 'notGeoJson', received: 'a list' }],
    [
      'a single feature',
      JSON.stringify(greenFeature()),
      { type: 'notGeoJson', received: "an object of type 'Feature'" },
    ],
    ['no green', fileText([]), { type: 'noGreens' }],
    ['another version', club({ version: 2 }), { type: 'wrongVersion', received: '2', allowed: 1 }],
    ['a feature that is none', fileText([greenFeature(), 7]), { type: 'wrongType', where: { feature: 1 } }],
    [
      'an unknown kind of feature',
      fileText([greenFeature({ kind: 'gren' })]),
      { type: 'notAllowed', received: "'gren'" },
    ],
    [
      'an outline that crosses itself',
      fileText([greenFeature({}, [bowTie])]),
      { type: 'selfCrossing', where: { feature: 0, name: 'Larkrise' } },
    ],
    [
      'a ring that is not closed',
      fileText([greenFeature({}, [[...rest.slice(0, 3), first]])]),
      { type: 'unclosedRing' },
    ],
    [
      'an outline without surface',
      fileText([greenFeature({}, [ring([0, 0], [20, 0], [20, 0.1])])]),
      { type: 'sliver' },
    ],
    [
      'an outline of a fairway',
      fileText([greenFeature({}, [ring([0, 0], [80, 0], [80, 100], [0, 100])])]),
      { type: 'outOfRange', unit: 'm2', max: 5000 },
    ],
    [
      'an island outside',
      fileText([greenFeature({}, [RECTANGLE, ring([40, 0], [50, 0], [50, 10])])]),
      { type: 'islandOutside' },
    ],
    [
      'longitude and latitude swapped',
      fileText([greenFeature({}, [RECTANGLE.map(([x, y]) => [y, x + 120])])]),
      { type: 'coordinateOutOfRange', swapped: true },
    ],
    [
      'swapped within range',
      fileText([
        greenFeature({ name: 'A' }),
        greenFeature({ name: 'B' }, [RECTANGLE.map(([x, y]) => [y, x])]),
      ]),
      { type: 'tooFarApart', where: { name: 'B' } },
    ],
    ['a text for a coordinate', fileText([greenFeature({}, [[['-4.9', '53.7']]])]), { type: 'wrongType' }],
    [
      'a line for a green',
      fileText([{ ...greenFeature(), geometry: { type: 'LineString', coordinates: RECTANGLE } }]),
      { type: 'notAllowed', field: 'geometry.type' },
    ],
    [
      'a negative depth',
      fileText([greenFeature({ rootzone: { kind: 'sand', goodDepthMm: -20 } })]),
      { type: 'outOfRange', field: 'rootzone.goodDepthMm', unit: 'mm', min: 0, received: -20 },
    ],
    [
      'an unknown machine',
      club({ machines: [{ kind: 'plough' }] }),
      { type: 'notAllowed', field: 'machines[0].kind', received: "'plough'" },
    ],
    [
      'an unknown operation among skills',
      club({ people: [{ name: 'Isla', skills: ['core', 'paint'] }] }),
      { type: 'notAllowed', field: 'people[0].skills[1]' },
    ],
    [
      'a field with a slip in it',
      club({ machines: [{ kind: 'dresser', hoperT: 1 }] }),
      { type: 'unknownField', field: 'machines[0].hoperT' },
    ],
    ['a person without a name', club({ people: [{}] }), { type: 'missing', field: 'people[0].name' }],
    [
      'a day that is none',
      club({ fixtures: [{ name: 'Cup', date: '2026-02-30', from: '08:00', to: '12:00', greens: 'all' }] }),
      { type: 'wrongType', field: 'fixtures[0].date' },
    ],
    [
      'a bad time zone',
      club({ timeZone: 'Europe/Atlantis' }),
      { type: 'badTimeZone', received: 'Europe/Atlantis' },
    ],
    [
      'two greens of one name',
      fileText([greenFeature(), greenFeature({ name: ' larkrise' })]),
      { type: 'twoOfOneName', ids: ['green-1', 'green-2'] },
    ],
    [
      'two greens of one id',
      fileText([greenFeature({ id: 'g' }), greenFeature({ id: 'g', name: 'Kiln' })]),
      { type: 'twoOfOneId', what: 'green', id: 'g' },
    ],
    [
      'two machines of one id',
      club({
        machines: [
          { kind: 'corer', id: 'm' },
          { kind: 'brush', id: 'm' },
        ],
      }),
      { type: 'twoOfOneId', what: 'machine' },
    ],
    [
      'a shift that ends before it begins',
      club({ people: [{ name: 'Isla', shift: { from: '15:00', to: '06:00' } }] }),
      { type: 'notBelow', field: 'from', limit: '06:00' },
    ],
    [
      'a break longer than its window',
      club({ people: [{ name: 'Isla', breaks: [{ earliest: '09:00', latest: '09:20', minutes: 30 }] }] }),
      { type: 'outOfRange', max: 20 },
    ],
    [
      'layers upside down',
      fileText([
        greenFeature({
          organicTests: [{ date: '2026-06-16', layers: [{ fromMm: 20, toMm: 10, organicPercent: 5 }] }],
        }),
      ]),
      { type: 'notBelow', limitField: 'toMm' },
    ],
    [
      'an overlap as wide as the machine',
      club({ machines: [{ kind: 'mower', widthM: 0.5, overlapM: 0.5 }] }),
      { type: 'notBelow', field: 'overlapM' },
    ],
    [
      'a tine as wide inside as outside',
      club({ tineSets: [{ holeDiameterMm: 10, coreDiameterMm: 10, sets: 1 }] }),
      { type: 'notBelow', field: 'coreDiameterMm', limit: '10' },
    ],
    [
      'sand in a bay that is not there',
      club({ stores: [{ kind: 'damp', stockT: 20, place: 'yard' }] }),
      { type: 'unknownReference', what: 'sandBay', id: 'yard' },
    ],
    [
      'a fixture on a green that is not there',
      club({ fixtures: [{ name: 'Cup', date: '2026-08-15', from: '08:00', to: '12:00', greens: ['g99'] }] }),
      { type: 'unknownReference', what: 'green', id: 'g99' },
    ],
  ]

  test.each(CASES)('%s is refused with its own error', (_, text, error) => {
    expect(errorOf(text)).toMatchObject(error)
  })

  test('the place where an outline crosses itself is told: the middle of a bow tie', () => {
    const error = errorOf(fileText([greenFeature({}, [bowTie])]))
    if (error.type !== 'selfCrossing') throw new Error(error.type)
    // The diagonals of a square of 20 m meet at 10 m, 10 m.
    expect(error.lonDeg).toBeCloseTo(at(10, 10)[0], 6)
    expect(error.latDeg).toBeCloseTo(at(10, 10)[1], 6)
  })

  test('a feature without a kind is left out and told', () => {
    const other = { type: 'Feature', properties: { landuse: 'grass' }, geometry: null }
    expect(read(fileText([other, greenFeature()])).assumed).toContain('feature.skipped:1')
  })

  test('ten megabytes of noise are refused in a few seconds even on a busy machine, each with an error of its own', () => {
    const noise = [
      'q7#'.repeat(3_400_000),
      '['.repeat(10_000_000),
      `{"a":"${'x'.repeat(10_000_000)}`,
      `{"type":"FeatureCollection","features":[${'1,'.repeat(4_900_000)}1]}`,
    ]
    const types = noise.map((text) => {
      const before = performance.now()
      const error = errorOf(text)
      expect(performance.now() - before).toBeLessThan(6000)
      return error.type
    })
    expect(types).toEqual(['notJson', 'tooDeep', 'notJson', 'tooMany'])
    const features = Array.from({ length: 5001 }, () => 1)
    expect(errorOf(fileText(features))).toMatchObject({ type: 'tooMany', what: 'features', received: 5001 })
    expect(errorOf(' '.repeat(20_000_001))).toMatchObject({ type: 'tooLarge', sizeMB: 21 })
  })
})

describe('tine sets', () => {
  const tines = { holeDiameterMm: 12, coreDiameterMm: 9, sets: 2 }

  test('are counted only where the file has them, and are written back as they were', () => {
    expect(read(club({})).course.tineSets).toBeUndefined()
    const { course } = read(club({ tineSets: [tines, { ...tines, id: 'spare', sets: 0.5 }] }))
    expect(course.tineSets).toEqual([
      { ...tines, id: 'tines-12-9', deliveries: [] },
      { ...tines, id: 'spare', sets: 0.5, deliveries: [] },
    ])
    expect(read(writeCourse(course)).course.tineSets).toEqual(course.tineSets)
  })

  test('have their range told, and no id in common with a sand store', () => {
    expect(errorOf(club({ tineSets: [{ ...tines, sets: 300 }] }))).toMatchObject({
      type: 'outOfRange',
      field: 'tineSets[0].sets',
      max: 200,
    })
    expect(
      errorOf(
        club({ stores: [{ id: 'one', kind: 'damp', stockT: 1 }], tineSets: [{ ...tines, id: 'one' }] }),
      ),
    ).toEqual({ type: 'twoOfOneId', what: 'store', id: 'one' })
  })
})
