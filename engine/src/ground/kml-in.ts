import { fail, ok, type Result } from '../result.ts'
import {
  contentOf,
  featureOf,
  type FeatureKind,
  type MapContent,
  type MapFeature,
  type MapFileError,
  type SkippedFeature,
} from './map-feature.ts'
import { childText, elementsNamed, readXml, type XmlElement } from './xml.ts'

/** `lon,lat[,height]` groups, split by white space (OGC KML 2.2, 16.9). */
const coordinates = (element: XmlElement): readonly (readonly [number, number])[] =>
  (childText(element, 'coordinates') ?? '')
    .split(/\s+/u)
    .filter((group) => group !== '')
    .map((group) => {
      const [lon = Number.NaN, lat = Number.NaN] = group.split(',').map(Number.parseFloat)
      return [lon, lat] as const
    })

const boundary = (polygon: XmlElement, name: string) =>
  elementsNamed(polygon, name)
    .flatMap((side) => elementsNamed(side, 'LinearRing'))
    .map(coordinates)

/** KML knows no kinds: a name that says so counts as one. */
const kindFromName = (name: string | undefined): FeatureKind => {
  const word = /\b(green|tee|bunker|fairway|path)\b/iu.exec(name ?? '')?.[1]?.toLowerCase()
  return word === 'green' || word === 'tee' || word === 'bunker' || word === 'fairway' || word === 'path'
    ? word
    : 'other'
}

const readPlacemark = (placemark: XmlElement, index: number): readonly (MapFeature | SkippedFeature)[] => {
  const name = childText(placemark, 'name')
  const kind = kindFromName(name)
  const surfaces = elementsNamed(placemark, 'Polygon').map((polygon) =>
    featureOf(
      { kind, name, shape: 'surface' },
      [...boundary(polygon, 'outerBoundaryIs'), ...boundary(polygon, 'innerBoundaryIs')],
      index,
    ),
  )
  const lines = elementsNamed(placemark, 'LineString').map((line) =>
    featureOf({ kind, name, shape: 'line' }, [coordinates(line)], index),
  )
  const found = [...surfaces, ...lines]
  return found.length === 0 ? [{ index, name, reason: 'noPlace' }] : found
}

/** Surfaces and lines of a KML text (OGC KML 2.2). Zipped KMZ must be unpacked first. */
export const readKml = (source: string): Result<MapContent, MapFileError> => {
  const document = readXml(source)
  if (elementsNamed(document, 'kml').length === 0)
    return fail({ type: 'unknownFormat', expected: 'KML with a <kml> element' })
  return ok(contentOf(elementsNamed(document, 'Placemark').flatMap(readPlacemark)))
}
