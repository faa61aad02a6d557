import { expect, test } from 'vitest'
import { readMapFile } from '../ground/map-file-in.ts'
import { courseFromMap } from './course-from-map.ts'
import { at } from './fixtures/small-file.ts'

/** A node of an OpenStreetMap extract so many metres east and north of the corner. */
const node = (id: number, eastM: number, northM: number): string => {
  const [lon, lat] = at(eastM, northM)
  return `<node id="${id}" lat="${lat}" lon="${lon}"/>`
}

const way = (id: number, nodes: readonly number[], tags: Readonly<Record<string, string>>): string =>
  `<way id="${id}">${nodes.map((ref) => `<nd ref="${ref}"/>`).join('')}${Object.entries(tags)
    .map(([k, v]) => `<tag k="${k}" v="${v}"/>`)
    .join('')}</way>`

/** Two greens of 20 m by 25 m, a bunker of 4 m by 5 m, and a path. */
const OSM = `<osm version="0.6">
${node(1, 0, 0)}${node(2, 20, 0)}${node(3, 20, 25)}${node(4, 0, 25)}
${node(5, 200, 0)}${node(6, 220, 0)}${node(7, 220, 25)}${node(8, 200, 25)}
${node(9, 30, 0)}${node(10, 34, 0)}${node(11, 34, 5)}${node(12, 30, 5)}
${way(20, [1, 2, 3, 4, 1], { golf: 'green', name: '7 Dimwell' })}
${way(21, [5, 6, 7, 8, 5], { golf: 'green' })}
${way(22, [9, 10, 11, 12, 9], { golf: 'bunker' })}
${way(23, [1, 5], { highway: 'track' })}
</osm>`

const courseOf = (text: string) => {
  const map = readMapFile(text)
  if (!map.ok) throw new Error(map.error.type)
  return courseFromMap(map.value)
}

test('an OpenStreetMap extract becomes a rough course: greens with areas, what lies around, the usual shed', () => {
  const course = courseOf(OSM)
  if (!course.ok) throw new Error(course.error.type)
  const { greens, places, machines } = course.value.course
  expect(greens.map(({ name, hole }) => [name, hole])).toEqual([
    ['7 Dimwell', 7],
    ['Green 2', null],
  ])
  for (const green of greens) expect(green.areaM2).toBeCloseTo(500, 1)
  expect(places.map(({ kind }) => kind)).toEqual(expect.arrayContaining(['bunker', 'track']))
  expect(machines.length).toBeGreaterThan(0)
  expect(course.value.assumed.length).toBeGreaterThan(0)
})

test('surfaces drawn without a kind count as greens, but not where some are called greens', () => {
  const polygon = (east: number, golf?: string) => ({
    type: 'Feature',
    properties: golf === undefined ? {} : { golf },
    geometry: {
      type: 'Polygon',
      coordinates: [[at(east, 0), at(east + 20, 0), at(east + 20, 25), at(east, 0)]],
    },
  })
  const file = (...features: readonly object[]) => JSON.stringify({ type: 'FeatureCollection', features })
  const plain = courseOf(file(polygon(0), polygon(100)))
  expect(plain.ok && plain.value.course.greens.length).toBe(2)
  const told = courseOf(file(polygon(0), polygon(100, 'green')))
  expect(told.ok && told.value.course.greens.length).toBe(1)
})

test('a map without greens is refused as a course file without greens is', () => {
  expect(courseOf('<osm version="0.6"></osm>').ok).toBe(false)
})
