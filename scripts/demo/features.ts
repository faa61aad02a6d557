import { lonLat, planeAt, type Plane } from '../../engine/src/ground/plane.ts'
import { GREEN_FACTS } from './green-facts.ts'
import { HOLES, type Hole } from './holes.ts'
import { placed, waved, type Spot } from './shapes.ts'

/** South-west corner of the demo: open sea between Anglesey and the Isle of Man, so that no real ground is meant. */
const ORIGIN = { lonDeg: -4.93, latDeg: 53.71 }

type Position = readonly [lon: number, lat: number]

const plane = (): Plane => {
  const origin = lonLat(ORIGIN.lonDeg, ORIGIN.latDeg)
  if (!origin.ok) throw new Error('the demo lies outside the map')
  return planeAt(origin.value)
}

/** Seven decimals are about one centimetre, finer than any survey of turf. */
const degrees = (value: number): number => Number(value.toFixed(7))

const toPosition = (spot: Spot): Position => {
  const place = plane().toLonLat({ x: spot[0], y: spot[1] })
  return [degrees(place.lonDeg), degrees(place.latDeg)]
}

const polygon = (ring: readonly Spot[]) => {
  const positions = ring.map(toPosition)
  return { type: 'Polygon', coordinates: [[...positions, positions[0]]] }
}

const feature = (properties: object, geometry: object) => ({ type: 'Feature', properties, geometry })

const greenFeature = (hole: Hole) => {
  const { areaM2, spot, turnDeg, shape } = hole
  return feature(
    { kind: 'green', id: hole.green, name: hole.name, hole: hole.hole, ...GREEN_FACTS[hole.green] },
    polygon(placed(shape, { spot, areaM2, turnDeg })),
  )
}

/** A tee: a rounded block, its long side along the hole. */
const teeFeature = (hole: Hole) => {
  if (hole.tee === null || hole.hole === null) return []
  const [dx, dy] = [hole.spot[0] - hole.tee[0], hole.spot[1] - hole.tee[1]]
  const turnDeg = (Math.atan2(dy, dx) * 180) / Math.PI
  const block: readonly Spot[] = [
    [-9, -3.5],
    [8, -4],
    [9.5, -2.5],
    [9.5, 2.5],
    [8, 4],
    [-9, 3.5],
    [-10, 2],
    [-10, -2],
  ]
  const number = String(hole.hole).padStart(2, '0')
  const ring = placed(block, { spot: hole.tee, areaM2: 145, turnDeg })
  return [feature({ kind: 'tee', id: `t${number}`, name: `Tee ${hole.hole}` }, polygon(ring))]
}

/** How far the green's edge lies from its centre in a direction: the farthest of its points within 40 degrees of it. */
const reachM = (hole: Hole, bearingDeg: number): number => {
  const ring = placed(hole.shape, { spot: hole.spot, areaM2: hole.areaM2, turnDeg: hole.turnDeg })
  const reaches = ring.map(([x, y]) => {
    const [dx, dy] = [x - hole.spot[0], y - hole.spot[1]]
    const off = Math.abs((((Math.atan2(dx, dy) * 180) / Math.PI - bearingDeg + 540) % 360) - 180)
    return off < 40 ? Math.hypot(dx, dy) : 0
  })
  return Math.max(...reaches)
}

/** Bunkers beside a green: small beans 3 m off its edge. */
const bunkerFeatures = (hole: Hole) =>
  hole.bunkers.map(([bearingDeg, areaM2], i) => {
    const distanceM = reachM(hole, bearingDeg) + 1.35 * Math.sqrt(areaM2 / Math.PI) + 3
    const bearing = (bearingDeg * Math.PI) / 180
    const spot: Spot = [
      hole.spot[0] + distanceM * Math.sin(bearing),
      hole.spot[1] + distanceM * Math.cos(bearing),
    ]
    const shape = waved(20, [
      [2, 0.16, 0],
      [3, 0.1, 90 + 40 * i],
    ])
    const id = `b${hole.green.slice(1)}${'abc'[i]}`
    const name = `Bunker ${hole.hole}${'abc'[i]}`
    return feature(
      { kind: 'bunker', id, name },
      polygon(placed(shape, { spot, areaM2, turnDeg: -bearingDeg })),
    )
  })

const blob = (spot: Spot, areaM2: number, turnDeg: number) =>
  polygon(
    placed(
      waved(40, [
        [2, 0.18, 0],
        [3, 0.1, 60],
        [5, 0.05, 10],
      ]),
      { spot, areaM2, turnDeg },
    ),
  )

const track = (id: string, name: string, line: readonly Spot[]) =>
  feature({ kind: 'track', id, name }, { type: 'LineString', coordinates: line.map(toPosition) })

const yard = (kind: string, id: string, name: string, spot: Spot) =>
  feature({ kind, id, name }, { type: 'Point', coordinates: toPosition(spot) })

const BOUNDARY: readonly Spot[] = [
  [12, 40],
  [150, 12],
  [420, 6],
  [660, -6],
  [900, 22],
  [1090, 18],
  [1252, 78],
  [1318, 300],
  [1322, 520],
  [1290, 760],
  [1246, 912],
  [1080, 932],
  [860, 908],
  [690, 912],
  [520, 900],
  [300, 872],
  [80, 884],
  [8, 812],
  [-6, 620],
  [40, 420],
  [24, 220],
]

const landscape = () => [
  yard('shed', 'shed', 'Greenkeepers’ shed', [668, 44]),
  yard('sandBay', 'sand-bay', 'Sand bay', [684, 58]),
  yard('arisingsBay', 'arisings-bay', 'Arisings bay', [694, 36]),
  feature(
    { kind: 'wood', id: 'west-wood', name: 'Hanger Wood' },
    polygon(
      placed(
        waved(40, [
          [2, 0.45, 0],
          [3, 0.07, 60],
          [5, 0.05, 10],
        ]),
        { spot: [224, 512], areaM2: 32_000, turnDeg: 66 },
      ),
    ),
  ),
  feature({ kind: 'wood', id: 'east-wood', name: 'Rookery' }, blob([1146, 436], 4_600, 60)),
  feature({ kind: 'water', id: 'tarn', name: 'Shed Tarn' }, blob([330, 190], 7_400, 15)),
  track('west-track', 'West track', [
    [668, 44],
    [640, 100],
    [590, 270],
    [505, 400],
    [480, 560],
    [500, 760],
    [545, 845],
  ]),
  track('north-track', 'North track', [
    [500, 760],
    [350, 752],
    [200, 772],
    [100, 800],
  ]),
  track('south-track', 'South track', [
    [640, 100],
    [480, 112],
    [300, 100],
    [215, 110],
    [160, 200],
    [150, 290],
  ]),
  track('east-track', 'East track', [
    [668, 44],
    [740, 60],
    [900, 56],
    [1020, 46],
    [1112, 72],
    [1200, 250],
    [1222, 420],
    [1196, 560],
    [1140, 800],
  ]),
  track('middle-track', 'Middle track', [
    [740, 60],
    [790, 250],
    [800, 480],
    [830, 680],
    [800, 800],
  ]),
  feature({ kind: 'boundary', id: 'boundary', name: 'Boundary' }, polygon(BOUNDARY)),
]

/** Every feature of the demo: greens first, in their order of play. */
export const demoFeatures = () => [
  ...HOLES.map(greenFeature),
  ...HOLES.flatMap(teeFeature),
  ...HOLES.flatMap(bunkerFeatures),
  ...landscape(),
]
