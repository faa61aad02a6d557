import {
  LngLatBounds,
  Map as LibreMap,
  NavigationControl,
  setWorkerUrl,
  type StyleSpecification,
} from 'maplibre-gl'
import workerUrl from 'maplibre-gl/dist/maplibre-gl-worker.mjs?url'
import 'maplibre-gl/dist/maplibre-gl.css'
import { TerraDraw, TerraDrawPolygonMode, TerraDrawSelectMode, type GeoJSONStoreFeatures } from 'terra-draw'
import { TerraDrawMapLibreGLAdapter } from 'terra-draw-maplibre-gl-adapter'
import type { Pair } from './draft.ts'

/** What the map is opened with. */
export type DrawingMapInput = {
  readonly holder: HTMLElement
  readonly name: string
  /** The outline so far, open; empty to begin with a new one. */
  readonly outer: readonly Pair[]
  /** Where the map opens when nothing is drawn. */
  readonly middle: Pair
  /** Outlines around it, closed. */
  readonly beside: readonly (readonly Pair[])[]
  /** Address of picture tiles with {z}, {x}, {y}; null for plain paper. */
  readonly tiles: string | null
  /** Called with the corners whenever somebody moved, added or took out one, and when a new outline is closed. */
  readonly onOuter: (outer: readonly Pair[]) => void
}

/** A map that an outline is drawn on. */
export type DrawingMap = {
  /** Shows these corners, as they were changed elsewhere. */
  readonly show: (outer: readonly Pair[]) => void
  /** Begins a new outline: the old one goes. */
  readonly drawNew: () => void
  readonly close: () => void
}

/** Scroll of tile pyramids that most services keep; beyond it the last pictures are enlarged. */
const DEEPEST_TILES = 19
const MOST_ZOOM = 23

/** The colour of a token as the page shows it now, '#rrggbb'. */
const colour = (token: string): `#${string}` => {
  const value = getComputedStyle(document.documentElement).getPropertyValue(`--${token}`).trim()
  return /^#[0-9a-f]{6}$/iu.test(value) ? `#${value.slice(1)}` : '#17211b'
}

const mutable = (ring: readonly Pair[]): [number, number][] => ring.map(([lon, lat]) => [lon, lat])

const closed = (ring: readonly Pair[]): [number, number][] => mutable([...ring, ...ring.slice(0, 1)])

const styleOf = ({ tiles, beside }: DrawingMapInput): StyleSpecification => ({
  version: 8,
  sources: {
    beside: {
      type: 'geojson',
      data: {
        type: 'MultiPolygon',
        coordinates: beside.map((ring) => [mutable(ring)]),
      },
    },
    ...(tiles === null
      ? {}
      : { tiles: { type: 'raster' as const, tiles: [tiles], tileSize: 256, maxzoom: DEEPEST_TILES } }),
  },
  layers: [
    { id: 'paper', type: 'background', paint: { 'background-color': colour('paper') } },
    ...(tiles === null ? [] : [{ id: 'tiles', type: 'raster' as const, source: 'tiles' }]),
    {
      id: 'beside',
      type: 'line',
      source: 'beside',
      paint: { 'line-color': colour('quiet'), 'line-width': 1.5, 'line-dasharray': [3, 2] },
    },
  ],
})

const drawer = (map: LibreMap): TerraDraw => {
  const edge = { leaf: colour('leaf'), ink: colour('ink'), paper: colour('paper') }
  return new TerraDraw({
    adapter: new TerraDrawMapLibreGLAdapter({ map, coordinatePrecision: 9 }),
    modes: [
      new TerraDrawPolygonMode({
        pointerDistance: 24,
        styles: {
          fillColor: edge.leaf,
          fillOpacity: 0.2,
          outlineColor: edge.leaf,
          outlineWidth: 3,
          closingPointColor: edge.paper,
          closingPointOutlineColor: edge.ink,
          closingPointOutlineWidth: 3,
          closingPointWidth: 9,
        },
      }),
      new TerraDrawSelectMode({
        pointerDistance: 24,
        flags: {
          polygon: {
            feature: {
              draggable: false,
              selfIntersectable: true,
              coordinates: { midpoints: true, draggable: true, deletable: true },
            },
          },
        },
        styles: {
          selectedPolygonColor: edge.leaf,
          selectedPolygonFillOpacity: 0.2,
          selectedPolygonOutlineColor: edge.leaf,
          selectedPolygonOutlineWidth: 3,
          selectionPointColor: edge.paper,
          selectionPointOutlineColor: edge.ink,
          selectionPointOutlineWidth: 3,
          selectionPointWidth: 9,
          midPointColor: edge.ink,
          midPointOutlineColor: edge.paper,
          midPointOutlineWidth: 1,
          midPointWidth: 5,
        },
      }),
    ],
  })
}

const isOutline = ({ geometry, properties }: GeoJSONStoreFeatures): boolean =>
  geometry.type === 'Polygon' && properties['mode'] === 'polygon'

/** The corners of what is drawn, open. */
const drawnOuter = (draw: TerraDraw): readonly Pair[] => {
  const geometry = draw.getSnapshot().find(isOutline)?.geometry
  if (geometry?.type !== 'Polygon') return []
  return (geometry.coordinates[0] ?? [])
    .slice(0, -1)
    .map(([lon = 0, lat = 0]): Pair => [Number(lon.toFixed(7)), Number(lat.toFixed(7))])
}

const frame = (map: LibreMap, { outer, middle }: DrawingMapInput): void => {
  const bounds = new LngLatBounds()
  for (const [lon, lat] of outer) bounds.extend([lon, lat])
  if (outer.length < 3) map.jumpTo({ center: [middle[0], middle[1]], zoom: 18.5 })
  else map.fitBounds(bounds, { padding: 40, animate: false, maxZoom: 20 })
}

const loaded = (map: LibreMap): Promise<void> =>
  new Promise((resolve) => {
    void map.once('load', () => resolve())
  })

/** Opens the map with the outline ready to be changed, or with the first corner to be pressed. Rejects where the browser can't draw it. */
export const openDrawingMap = async (input: DrawingMapInput): Promise<DrawingMap> => {
  setWorkerUrl(workerUrl)
  const map = new LibreMap({
    container: input.holder,
    style: styleOf(input),
    maxZoom: MOST_ZOOM,
    attributionControl: false,
    dragRotate: false,
    pitchWithRotate: false,
    locale: { 'Map.Title': input.name },
  })
  map.addControl(new NavigationControl({ showCompass: false }))
  frame(map, input)
  await loaded(map)
  const draw = drawer(map)
  draw.start()
  let told = ''
  const tell = (): void => {
    const outer = drawnOuter(draw)
    const text = JSON.stringify(outer)
    if (text === told) return
    told = text
    input.onOuter(outer)
  }
  const show = (outer: readonly Pair[]): void => {
    const text = JSON.stringify(outer)
    if (text === told) return
    told = text
    draw.clear()
    if (outer.length < 3) {
      draw.setMode('polygon')
      return
    }
    draw.setMode('select')
    const [added] = draw.addFeatures([
      {
        type: 'Feature',
        geometry: { type: 'Polygon', coordinates: [closed(outer)] },
        properties: { mode: 'polygon' },
      },
    ])
    if (added?.id !== undefined) draw.selectFeature(added.id)
  }
  draw.on('change', (_ids, type) => {
    if (draw.getMode() === 'select' && type !== 'create' && type !== 'styling') tell()
  })
  draw.on('finish', (id, { action }) => {
    tell()
    if (action !== 'draw') return
    draw.setMode('select')
    draw.selectFeature(id)
  })
  told = 'nothing shown yet'
  show(input.outer)
  return {
    show,
    drawNew: () => show([]),
    close: () => {
      draw.stop()
      map.remove()
    },
  }
}
