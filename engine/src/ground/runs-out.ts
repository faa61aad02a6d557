import type { Run } from './passes.ts'
import type { LocalPoint, Plane } from './plane.ts'
import { xmlText } from './xml.ts'

/** Decimals of a degree written: 1e-7 is about 1 cm. */
const DEGREE_DECIMALS = 7

const rounded = (value: number, decimals: number): number => Number(value.toFixed(decimals))

/** Longitude and latitude of a local point, rounded to about 1 cm. */
export const degreesOf = (plane: Plane, point: LocalPoint): readonly [number, number] => {
  const place = plane.toLonLat(point)
  return [rounded(place.lonDeg, DEGREE_DECIMALS), rounded(place.latDeg, DEGREE_DECIMALS)]
}

/** The line driven, a lap closed by its first point. */
const driven = (run: Run): readonly LocalPoint[] => {
  const [first] = run.path
  return run.kind === 'lap' && first !== undefined ? [...run.path, first] : run.path
}

/** Runs as a GeoJSON text (RFC 7946): one line each, in working order, with its number and length. */
export const runsToGeoJson = (runs: readonly Run[], plane: Plane, name: string): string =>
  JSON.stringify({
    type: 'FeatureCollection',
    features: runs.map((run, k) => ({
      type: 'Feature',
      properties: { name, run: k + 1, kind: run.kind, lengthM: rounded(run.lengthM, 2) },
      geometry: { type: 'LineString', coordinates: driven(run).map((point) => degreesOf(plane, point)) },
    })),
  })

const routePoint = ([lon, lat]: readonly [number, number]): string => `<rtept lat="${lat}" lon="${lon}"/>`

/** Runs as a GPX 1.1 text: one route each, in working order. */
export const runsToGpx = (runs: readonly Run[], plane: Plane, name: string): string => {
  const routes = runs.map((run, k) => {
    const points = driven(run).map((point) => routePoint(degreesOf(plane, point)))
    return `<rte><name>${xmlText(name)} ${k + 1}</name><number>${k + 1}</number>${points.join('')}</rte>`
  })
  return `<?xml version="1.0" encoding="UTF-8"?>
<gpx version="1.1" creator="Swardwright" xmlns="http://www.topografix.com/GPX/1/1">
${routes.join('\n')}
</gpx>
`
}
