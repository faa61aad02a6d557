import { fail, type Result } from '../result.ts'
import { readGeoJson } from './geojson-in.ts'
import { readGpx } from './gpx-in.ts'
import { readKml } from './kml-in.ts'
import type { MapContent, MapFileError } from './map-feature.ts'
import { readOsmJson, readOsmXml } from './osm-in.ts'

/** Reads any of the map files known here, told apart by what they hold, not by their name. */
export const readMapFile = (source: string): Result<MapContent, MapFileError> => {
  const text = source.replace(/^\uFEFF/u, '')
  const start = text.trimStart()
  if (start.startsWith('{')) return /"elements"\s*:/u.test(text) ? readOsmJson(text) : readGeoJson(text)
  if (/<(?:\w+:)?gpx[\s>]/u.test(start)) return readGpx(text)
  if (/<(?:\w+:)?kml[\s>]/u.test(start)) return readKml(text)
  if (/<osm[\s>]/u.test(start)) return readOsmXml(text)
  return fail({
    type: 'unknownFormat',
    expected: 'GeoJSON, KML, GPX or an OpenStreetMap extract (XML or JSON)',
  })
}
