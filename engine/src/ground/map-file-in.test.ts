import { describe, expect, test } from 'vitest'
import { circle } from './fixtures/outlines.ts'
import type { MapContent } from './map-feature.ts'
import { readMapFile } from './map-file-in.ts'
import { outlineFrom } from './outline.ts'
import { planPasses } from './passes.ts'
import { lonLat, planeAt } from './plane.ts'
import { runsToGeoJson, runsToGpx } from './runs-out.ts'
import { elementsNamed, readXml } from './xml.ts'

const content = (source: string): MapContent => {
  const read = readMapFile(source)
  if (!read.ok) throw new Error(JSON.stringify(read.error))
  return read.value
}

// A square of 0.0003 x 0.0002 degrees near 56 N. By hand with the degree lengths at 56.0001 N, 62,393 and 111,342 m
// (series of the NGA, see plane.test.ts): 18.718 x 22.268 = 416.8 m2.
const SQUARE: readonly (readonly [number, number])[] = [
  [-3, 56],
  [-2.9997, 56],
  [-2.9997, 56.0002],
  [-3, 56.0002],
  [-3, 56],
]
const SQUARE_M2 = 416.8

const areaM2 = (read: MapContent, index = 0): number => {
  const made = outlineFrom(read.features[index]?.rings ?? [])
  if (!made.ok) throw new Error(made.error.problem.type)
  return made.value.areaM2
}

const geoJson = (geometry: unknown, properties = {}) =>
  JSON.stringify({ type: 'FeatureCollection', features: [{ type: 'Feature', properties, geometry }] })

describe('GeoJSON', () => {
  test('a polygon is read with name and kind, and its area is told to 1 m2', () => {
    const read = content(
      geoJson({ type: 'Polygon', coordinates: [SQUARE] }, { name: 'Seven', golf: 'green' }),
    )
    expect(read.features).toMatchObject([{ kind: 'green', name: 'Seven', shape: 'surface' }])
    expect(read.features[0]?.rings[0]).toHaveLength(4)
    expect(Math.abs(areaM2(read) - SQUARE_M2)).toBeLessThan(0.5)
  })

  test('multipolygons and collections come apart, bare geometries are read, points are told as skipped', () => {
    const two = content(JSON.stringify({ type: 'MultiPolygon', coordinates: [[SQUARE], [SQUARE]] }))
    expect(two.features).toHaveLength(2)
    expect(content(geoJson({ type: 'Point', coordinates: [1, 2] }))).toEqual({
      features: [],
      skipped: [{ index: 0, name: undefined, reason: 'noPlace' }],
    })
    const off = content(
      geoJson({
        type: 'Polygon',
        coordinates: [
          [
            [0, 95],
            [1, 95],
            [1, 96],
          ],
        ],
      }),
    )
    expect(off.skipped).toMatchObject([{ reason: 'placeOutOfRange' }])
  })
})

test('a crossing is told with its place on the map', () => {
  const eight = [
    [-3, 56],
    [-2.9997, 56.0002],
    [-2.9997, 56],
    [-3, 56.0002],
  ]
  const read = content(geoJson({ type: 'Polygon', coordinates: [eight] }))
  const made = outlineFrom(read.features[0]?.rings ?? [])
  if (made.ok) throw new Error('a figure of eight is no green')
  expect(made.error.problem.type).toBe('selfCrossing')
  expect(made.error.at?.lonDeg).toBeCloseTo(-2.99985, 8)
  expect(made.error.at?.latDeg).toBeCloseTo(56.0001, 8)
})

describe('KML', () => {
  test('placemarks with islands and prefixes are read', () => {
    const ring = (pairs: typeof SQUARE) =>
      `<kml:LinearRing><kml:coordinates>\n ${pairs.map(([lon, lat]) => `${lon},${lat},12`).join('\n ')}</kml:coordinates></kml:LinearRing>`
    const island: typeof SQUARE = [
      [-2.9999, 56.0001],
      [-2.9998, 56.0001],
      [-2.9998, 56.00015],
      [-2.9999, 56.0001],
    ]
    const read = content(
      `<?xml version="1.0"?><kml:kml xmlns:kml="x"><!-- <Placemark> --><kml:Placemark><kml:name><![CDATA[Green & 4]]></kml:name>
       <kml:Polygon><kml:outerBoundaryIs>${ring(SQUARE)}</kml:outerBoundaryIs><kml:innerBoundaryIs>${ring(island)}</kml:innerBoundaryIs></kml:Polygon>
       </kml:Placemark></kml:kml>`,
    )
    expect(read.features).toMatchObject([{ kind: 'green', name: 'Green & 4', shape: 'surface' }])
    expect(read.features[0]?.rings).toHaveLength(2)
  })
})

describe('OpenStreetMap', () => {
  const nodes = SQUARE.slice(0, 4).map(([lon, lat], k) => ({ type: 'node', id: k + 1, lon, lat }))

  test('XML: golf ways become greens and paths, a multipolygon is joined from parts of rings', () => {
    const read = content(`<osm version="0.6">
      ${nodes.map((node) => `<node id='${node.id}' lat='${node.lat}' lon='${node.lon}'/>`).join('')}
      <way id="10"><nd ref="1"/><nd ref="2"/><nd ref="3"/><nd ref="4"/><nd ref="1"/><tag k="golf" v="green"/><tag k="ref" v="9"/></way>
      <way id="11"><nd ref="1"/><nd ref="3"/><tag k="golf" v="cartpath"/></way>
      <way id="12"><nd ref="1"/><nd ref="2"/><nd ref="3"/></way><way id="13"><nd ref="1"/><nd ref="4"/><nd ref="3"/></way>
      <way id="14"><nd ref="1"/><nd ref="99"/><tag k="golf" v="bunker"/></way>
      <relation id="20"><member type="way" ref="12" role="outer"/><member type="way" ref="13" role="outer"/><tag k="golf" v="bunker"/></relation>
      </osm>`)
    expect(read.features.map(({ kind, shape, name }) => [kind, shape, name])).toEqual([
      ['green', 'surface', '9'],
      ['path', 'line', undefined],
      ['bunker', 'surface', undefined],
    ])
    expect(Math.abs(areaM2(read) - SQUARE_M2)).toBeLessThan(0.5)
    expect(Math.abs(areaM2(read, 2) - SQUARE_M2)).toBeLessThan(0.5)
    expect(read.skipped).toMatchObject([{ reason: 'missingNodes' }])
  })

  test('JSON: with nodes listed, or with places written out in the way', () => {
    const tags = { golf: 'green', name: 'Nine' }
    const listed = { elements: [...nodes, { type: 'way', id: 1, nodes: [1, 2, 3, 4, 1], tags }] }
    const written = {
      elements: [{ type: 'way', id: 1, geometry: SQUARE.map(([lon, lat]) => ({ lon, lat })), tags }],
    }
    for (const file of [listed, written]) {
      const read = content(JSON.stringify(file))
      expect(read.features).toMatchObject([{ kind: 'green', name: 'Nine' }])
      expect(Math.abs(areaM2(read) - SQUARE_M2)).toBeLessThan(0.5)
    }
  })
})

test('what is none of these is refused, with what is expected', () => {
  expect(readMapFile('hello')).toMatchObject({ error: { type: 'unknownFormat' } })
  expect(readMapFile('{"type": ')).toMatchObject({ error: { type: 'notJson' } })
  expect(readMapFile('{"a": 1}')).toMatchObject({ error: { type: 'unknownFormat' } })
})

test('cut-off and odd files never throw', () => {
  const whole = `<gpx><trk><name>a &#x41;&unknown; b</name><trkseg><trkpt lat="1" lon='2'/><trkpt lat="1.1" lon="2"></trkpt></trkseg></trk></gpx>`
  for (let end = 0; end <= whole.length; end++) readMapFile(whole.slice(0, end))
  expect(content(whole).features).toMatchObject([{ name: 'a A&unknown; b', shape: 'line' }])
})

describe('runs out', () => {
  const origin = lonLat(-3, 56)
  if (!origin.ok) throw new Error('sound')
  const plane = planeAt(origin.value)
  const settings = {
    widthM: 2,
    overlapM: 0,
    speedMPerS: 1,
    turnRadiusM: 0,
    turnStyle: 'lift',
    laps: 1,
    order: 'backAndForth',
  } as const
  const { runs } = planPasses(circle(9, 60), settings, 30)

  test('GeoJSON gives each run back as a line in its order, to a few centimetres', () => {
    const read = content(runsToGeoJson(runs, plane, 'Green 4'))
    expect(read.features).toHaveLength(runs.length)
    read.features.forEach((feature, k) => {
      const places = feature.rings[0] ?? []
      const [first] = places
      const point = first === undefined ? { x: 0, y: 0 } : plane.toLocal(first)
      expect(Math.hypot(point.x - (runs[k]?.from.x ?? 0), point.y - (runs[k]?.from.y ?? 0))).toBeLessThan(
        0.03,
      )
    })
  })

  test('GPX gives the same, and names are made safe', () => {
    const text = runsToGpx(runs, plane, 'Green <4> & "co"')
    expect(elementsNamed(readXml(text), 'name')[0]?.text).toBe('Green <4> & "co" 1')
    expect(content(text).features).toHaveLength(runs.length)
  })
})
