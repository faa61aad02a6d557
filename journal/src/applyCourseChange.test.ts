import * as v from 'valibot'
import { describe, expect, it } from 'vitest'
import { applyCourseChange } from './applyCourseChange.ts'
import { courseChange } from './courseChange.ts'
import { smallCourse } from './testing/entries.ts'

const changed = (change: unknown) => {
  const result = applyCourseChange(smallCourse, v.parse(courseChange, change))
  if (!result.ok) throw new Error(JSON.stringify(result.error))
  return result.value
}

const [g1, g2] = smallCourse.greens
if (g1 === undefined || g2 === undefined) throw new Error('the small course has two greens')

describe('a change to a course', () => {
  it('sets some fields of one green and leaves the rest', () => {
    const course = changed({ part: 'greens', do: 'set', id: 'g2', fields: { areaM2: 512, weak: true } })
    expect(course.greens).toEqual([g1, { ...g2, areaM2: 512, weak: true }])
    expect({ ...course, greens: smallCourse.greens }).toEqual(smallCourse)
  })

  it('puts a green in place of the one with its id, and a new one last', () => {
    const anew = changed({ part: 'greens', do: 'put', value: { ...g1, name: 'First' } })
    expect(anew.greens.map((green) => green.name)).toEqual(['First', 'Green 2'])
    const more = changed({ part: 'greens', do: 'put', value: { ...g1, id: 'g3', name: 'Third' } })
    expect(more.greens.map((green) => green.id)).toEqual(['g1', 'g2', 'g3'])
  })

  it('takes an item out', () => {
    expect(changed({ part: 'greens', do: 'remove', id: 'g1' }).greens).toEqual([g2])
  })

  it('empties a field that a green may do without', () => {
    const outline = [
      [
        [0, 0],
        [0, 1],
        [1, 1],
        [0, 0],
      ],
    ]
    const drawn = applyCourseChange(
      smallCourse,
      v.parse(courseChange, { part: 'greens', do: 'set', id: 'g1', fields: { outline } }),
    )
    if (!drawn.ok) throw new Error('not drawn')
    expect(drawn.value.greens[0]?.outline).toEqual(outline)
    const emptied = applyCourseChange(drawn.value, {
      part: 'greens',
      do: 'set',
      id: 'g1',
      fields: {},
      clear: ['outline'],
    })
    expect(emptied).toEqual({ ok: true, value: smallCourse })
  })

  it('sets settings, units and plain facts one by one', () => {
    expect(changed({ part: 'settings', do: 'set', fields: { openGreensCap: 4 } }).settings).toEqual({
      ...smallCourse.settings,
      openGreensCap: 4,
    })
    expect(changed({ part: 'units', do: 'set', fields: { depth: 'in' } }).units.depth).toBe('in')
    expect(changed({ part: 'facts', do: 'set', fields: { name: 'Far Links' } }).name).toBe('Far Links')
  })

  it('replaces the whole course, also where there was none', () => {
    expect(applyCourseChange(null, { part: 'course', do: 'put', value: smallCourse })).toEqual({
      ok: true,
      value: smallCourse,
    })
  })

  it('[J12] fails when there is nothing to change', () => {
    const change = v.parse(courseChange, { part: 'greens', do: 'set', id: 'g9', fields: { weak: true } })
    expect(applyCourseChange(smallCourse, change)).toEqual({
      ok: false,
      error: { type: 'noItem', part: 'greens', id: 'g9' },
    })
    expect(applyCourseChange(null, change)).toEqual({
      ok: false,
      error: { type: 'noCourse', part: 'greens' },
    })
  })

  it('[J12] never takes out the last green', () => {
    const one = changed({ part: 'greens', do: 'remove', id: 'g1' })
    expect(applyCourseChange(one, { part: 'greens', do: 'remove', id: 'g2' })).toEqual({
      ok: false,
      error: { type: 'lastGreen', part: 'greens', id: 'g2' },
    })
  })

  it.each([
    ['a field that a green has not', { part: 'greens', do: 'set', id: 'g1', fields: { areaM: 3 } }],
    ['an area out of range', { part: 'greens', do: 'set', id: 'g1', fields: { areaM2: -4 } }],
    ['another id', { part: 'greens', do: 'set', id: 'g1', fields: { id: 'g2' } }],
    ['a needed field emptied', { part: 'greens', do: 'set', id: 'g1', fields: {}, clear: ['areaM2'] }],
    ['a part that is none', { part: 'trees', do: 'remove', id: 'g1' }],
    ['an unknown deed', { part: 'greens', do: 'paint', id: 'g1' }],
  ])('is no change with %s', (_what, change) => {
    expect(v.is(courseChange, change)).toBe(false)
  })
})
