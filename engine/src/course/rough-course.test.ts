import { expect, test } from 'vitest'
import { canonicalJson, courseHash } from './course-hash.ts'
import { courseFromCsv } from './course-csv.ts'
import { readCourse } from './read-course.ts'
import { M_PER_DEGREE } from './fixtures/small-file.ts'
import { courseFromCount } from './rough-course.ts'
import { writeCourse } from './write-course.ts'

const csv = (text: string) => {
  const result = courseFromCsv(text)
  if (!result.ok) throw new Error(JSON.stringify(result.error))
  return result.value.course.greens.map(({ name, hole, areaM2 }) => [name, hole, areaM2])
}

const csvError = (text: string) => {
  const result = courseFromCsv(text)
  if (result.ok) throw new Error('the list was read')
  return result.error
}

const NINETEEN = { greens: 19, totalAreaM2: 9500 }

test('a number of greens and an area give a whole course, marked rough', () => {
  const rough = courseFromCount(NINETEEN)
  if (!rough.ok) throw new Error(JSON.stringify(rough.error))
  const { course, assumed } = rough.value
  // 9500 m2 / 19 = 500 m2 each.
  expect(course.greens.map(({ areaM2 }) => areaM2)).toEqual(Array.from({ length: 19 }, () => 500))
  expect(course.greens.filter(({ hole }) => hole !== null)).toHaveLength(18)
  expect(assumed).toEqual(
    expect.arrayContaining(['course.rough', 'green.at:all', 'machines.typical', 'course.at:53:-2']),
  )
})

test('a rough course written and read again is the same and still marked rough', () => {
  const rough = courseFromCount({ ...NINETEEN, name: 'Ossenby', at: [-4.9, 53.7], timeZone: 'Europe/London' })
  if (!rough.ok) throw new Error(JSON.stringify(rough.error))
  const read = readCourse(writeCourse(rough.value.course, rough.value.assumed))
  if (!read.ok) throw new Error(JSON.stringify(read.error))
  expect(canonicalJson(read.value.course)).toBe(canonicalJson(rough.value.course))
  expect(read.value.assumed).toEqual(expect.arrayContaining([...rough.value.assumed]))
  expect(courseHash(read.value.course)).toBe(courseHash(rough.value.course))
})

test('greens of a loop lie apart as greens do: neighbours 150 to 250 m, none nearer than 100 m', () => {
  const rough = courseFromCount({ greens: 18, totalAreaM2: 9000, at: [-4.93, 53.71] })
  if (!rough.ok) throw new Error('rough')
  // Metres a degree at 53.71 N: see fixtures/small-file.ts.
  const spots = rough.value.course.greens.map(
    ({ at }) => [at[0] * M_PER_DEGREE.lon, at[1] * M_PER_DEGREE.lat] as const,
  )
  const apartM = (a: number, b: number): number =>
    Math.hypot((spots[a]?.[0] ?? 0) - (spots[b]?.[0] ?? 0), (spots[a]?.[1] ?? 0) - (spots[b]?.[1] ?? 0))
  for (let a = 0; a < 18; a++) for (let b = 0; b < a; b++) expect(apartM(a, b)).toBeGreaterThan(100)
  for (const hole of [1, 2, 3, 4, 5, 6, 7, 8]) {
    expect(apartM(hole, hole - 1)).toBeGreaterThan(150)
    expect(apartM(hole, hole - 1)).toBeLessThan(250)
  }
})

test('a count or an area out of range is refused with the range', () => {
  const error = (greens: number, totalAreaM2: number) => {
    const result = courseFromCount({ greens, totalAreaM2 })
    return result.ok ? null : result.error
  }
  expect(error(0, 500)).toMatchObject({ type: 'outOfRange', field: 'greens', min: 1, max: 54 })
  expect(error(2.5, 500)).toMatchObject({ type: 'outOfRange', field: 'greens' })
  expect(error(18, 90)).toMatchObject({ type: 'outOfRange', field: 'totalAreaM2', min: 360, max: 90_000 })
  expect(error(18, NaN)).toMatchObject({ type: 'outOfRange', field: 'totalAreaM2' })
})

test('lists with comma, semicolon or tab, heading or none, decimal comma or point all give the same greens', () => {
  const wanted = [
    ['Larkrise', 1, 452.5],
    ['Kiln', 2, 500],
  ]
  expect(csv('Larkrise,452.5\nKiln,500')).toEqual(wanted)
  expect(csv('name;area\r\nLarkrise;452,5\r\nKiln;500\r\n')).toEqual(wanted)
  expect(csv('\uFEFFArea (m2)\tGreen\n452,5\tLarkrise\n500 m2\tKiln')).toEqual(wanted)
  expect(csv('"Larkrise";"452,5"\n\n"Kiln";500')).toEqual(wanted)
})

test('square feet are turned into square metres when the heading says so', () => {
  // 5000 ft2 x 0.3048 x 0.3048 = 464.5152 m2.
  const [[, , areaM2] = []] = csv('green,area ft2\nLarkrise,5000')
  expect(areaM2).toBeCloseTo(464.5152, 9)
})

test('a number in the name is the hole; names without one leave the practice green without', () => {
  expect(csv('7,400\nHole 8,410\nPractice,600')).toEqual([
    ['Green 7', 7, 400],
    ['Hole 8', 8, 410],
    ['Practice', null, 600],
  ])
})

test('a bad list is refused with the line', () => {
  expect(csvError('')).toEqual({ type: 'noGreens' })
  expect(csvError('Larkrise;452\nKiln;big')).toMatchObject({
    type: 'wrongType',
    where: { path: 'line 2', name: 'Kiln' },
  })
  expect(csvError('Larkrise,452,5')).toMatchObject({ type: 'wrongType', where: { path: 'line 1' } })
  expect(csvError('Larkrise;4')).toMatchObject({ type: 'outOfRange', min: 20, max: 5000, received: 4 })
  expect(csvError(';452')).toMatchObject({ type: 'missing', field: 'name' })
  expect(csvError('Kiln;400\nkiln;420')).toMatchObject({ type: 'twoOfOneName' })
  expect(csvError(Array.from({ length: 60 }, (_, i) => `A${i};400`).join('\n'))).toMatchObject({
    type: 'tooMany',
    max: 54,
  })
})

test('the hash does not hang on the order of fields, and any change of content changes it', () => {
  const rough = courseFromCount(NINETEEN)
  if (!rough.ok) throw new Error('rough')
  const { course } = rough.value
  const turned = Object.fromEntries(Object.entries(course).reverse()) as typeof course
  expect(courseHash(turned)).toBe(courseHash(course))
  expect(courseHash({ ...course, altitudeM: 1 })).not.toBe(courseHash(course))
  expect(courseHash(course)).toMatch(/^[0-9a-f]{64}$/u)
})

test('canonical JSON sorts keys by code unit and writes no blanks (RFC 8785, section 3.2.3 example, by hand)', () => {
  expect(canonicalJson({ b: [1, 2.5, null], a: { d: 'x', c: undefined } })).toBe(
    '{"a":{"d":"x"},"b":[1,2.5,null]}',
  )
})
