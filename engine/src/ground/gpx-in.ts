import { fail, ok, type Result } from '../result.ts'
import { contentOf, featureOf, type MapContent, type MapFileError } from './map-feature.ts'
import { childText, elementsNamed, readXml, type XmlElement } from './xml.ts'

const pairOf = (point: XmlElement): readonly [number, number] => [
  Number.parseFloat(point.attributes['lon'] ?? ''),
  Number.parseFloat(point.attributes['lat'] ?? ''),
]

/** Lines of a GPX 1.0 or 1.1 text: each track segment and each route. Waypoints are left out. Walked outlines are closed by `walkedOutline`. */
export const readGpx = (source: string): Result<MapContent, MapFileError> => {
  const document = readXml(source)
  if (elementsNamed(document, 'gpx').length === 0)
    return fail({ type: 'unknownFormat', expected: 'GPX with a <gpx> element' })
  const tracks = elementsNamed(document, 'trk').flatMap((track) =>
    elementsNamed(track, 'trkseg').map((segment) => ({
      name: childText(track, 'name'),
      points: elementsNamed(segment, 'trkpt'),
    })),
  )
  const routes = elementsNamed(document, 'rte').map((route) => ({
    name: childText(route, 'name'),
    points: elementsNamed(route, 'rtept'),
  }))
  return ok(
    contentOf(
      [...tracks, ...routes].map(({ name, points }, index) =>
        featureOf({ kind: 'other', name, shape: 'line' }, [points.map(pairOf)], index),
      ),
    ),
  )
}
