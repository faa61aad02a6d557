import type { DresserLoad, LocalPoint, Passes, Polygon, Ring, Run } from '@swardwright/engine'
import { coordinate, draw, part, sheet, type Drawing } from './drawing.ts'
import { haloText } from './halo-text.ts'
import { headingWords } from './headings.ts'
import { counted, decimal } from './numbers.ts'
import { patternDefinitions, patternFill } from './patterns.ts'
import { paint } from './tokens.ts'

/** What the drawing of a green with its runs shows. North is up. */
export type GroundDrawingInput = {
  /** The green's name. */
  readonly name: string
  readonly polygon: Polygon
  /** One pass, or a first and a second one. Their widths, m, draw the bands. */
  readonly passes: readonly { readonly runs: Passes; readonly widthM: number }[]
  /** Dresser loads of the first pass: each gets a stroke of its own and a mark where it starts. */
  readonly loads?: readonly DresserLoad[]
  /** Bearing of twelve o'clock, degrees; north where it is not known. */
  readonly twelveDeg?: number
  /** True when the outline is an ellipse that stands in for the green. */
  readonly isApproximate?: boolean
}

const WIDTH_PX = 640
const MARGIN_PX = 28
const LEGEND_PX = 22

/** More runs than this get a number on every fifth only. */
const MOST_NUMBERS = 30

/** Strokes that differ on black and white paper, by pass and then by load. */
const PASS_STROKES = [
  { stroke: paint('ink'), dash: undefined, width: 1.5 },
  { stroke: paint('dusk'), dash: '2 3', width: 1.3 },
] as const
const LOAD_DASHES = [undefined, '9 4', '2 3', '12 3 2 3', '5 2 5 6'] as const

/** Metres to pixels, north up. */
type Frame = {
  readonly x: (point: LocalPoint) => number
  readonly y: (point: LocalPoint) => number
  readonly pxPerM: number
  readonly heightPx: number
}

const frameFor = ({ polygon, passes }: GroundDrawingInput): Frame => {
  const points = [...polygon.outer, ...passes.flatMap(({ runs }) => runs.runs.flatMap((run) => run.path))]
  const xs = points.map((point) => point.x)
  const ys = points.map((point) => point.y)
  const [west, east] = [Math.min(...xs), Math.max(...xs)]
  const [south, north] = [Math.min(...ys), Math.max(...ys)]
  const pxPerM = (WIDTH_PX - 2 * MARGIN_PX) / Math.max(east - west, north - south)
  return {
    x: (point) => MARGIN_PX + (point.x - west) * pxPerM,
    y: (point) => MARGIN_PX + (north - point.y) * pxPerM,
    pxPerM,
    heightPx: 2 * MARGIN_PX + (north - south) * pxPerM,
  }
}

const pathData = (points: readonly LocalPoint[], frame: Frame, isClosed: boolean): string => {
  const places = points.map((point) => `${coordinate(frame.x(point))} ${coordinate(frame.y(point))}`)
  return `M${places.join('L')}${isClosed ? 'Z' : ''}`
}

const ringsData = (rings: readonly Ring[], frame: Frame): string =>
  rings.map((ring) => pathData(ring, frame, true)).join('')

/** An arrow head at the end of a straight run. */
const arrow = (run: Run, frame: Frame, colour: string): Drawing => {
  const [x, y] = [frame.x(run.to), frame.y(run.to)]
  const [dx, dy] = [x - frame.x(run.from), y - frame.y(run.from)]
  const length = Math.hypot(dx, dy) || 1
  const [ux, uy] = [dx / length, dy / length]
  const corner = (back: number, side: number) =>
    `${coordinate(x - back * ux - side * uy)} ${coordinate(y - back * uy + side * ux)}`
  return draw('path', { d: `M${corner(0, 0)}L${corner(7, 3)}L${corner(7, -3)}Z`, fill: colour })
}

/** The load that a run belongs to, from 0; 0 where there are no loads. */
const loadOfRun = (index: number, loads: readonly DresserLoad[]): number =>
  Math.max(
    0,
    loads.findIndex((load) => index >= load.firstRun && index <= load.lastRun),
  )

const runTitle = (run: Run, index: number, load: number | undefined): string => {
  const what = run.kind === 'lap' ? 'lap' : 'run'
  const sand = load === undefined ? '' : `, load ${load + 1}`
  return `${what} ${index + 1}: ${decimal(run.lengthM, 1)} m${sand}`
}

const passLines = (input: GroundDrawingInput, pass: number, frame: Frame): readonly Drawing[] => {
  const { runs } = input.passes[pass]?.runs ?? { runs: [] }
  const style = PASS_STROKES[pass] ?? PASS_STROKES[1]
  const loads = pass === 0 ? (input.loads ?? []) : []
  return runs.map((run, index) => {
    const load = loads.length === 0 ? undefined : loadOfRun(index, loads)
    const line = draw('path', {
      d: pathData(run.path, frame, run.kind === 'lap'),
      fill: 'none',
      stroke: style.stroke,
      'stroke-width': style.width,
      'stroke-dasharray': load === undefined ? style.dash : LOAD_DASHES[load % LOAD_DASHES.length],
    })
    const title = runTitle(run, index, load)
    const head = run.kind === 'straight' ? arrow(run, frame, style.stroke) : null
    return part('run', `${pass + 1}.${index + 1}`, title, [line, head])
  })
}

/** Bands as wide as the machine under the first pass, so that overlap shows darker. */
const bands = (input: GroundDrawingInput, frame: Frame): readonly Drawing[] => {
  const [first] = input.passes
  return (first?.runs.runs ?? []).map((run) =>
    draw('path', {
      d: pathData(run.path, frame, run.kind === 'lap'),
      fill: 'none',
      stroke: paint('rule'),
      'stroke-width': (first?.widthM ?? 0) * frame.pxPerM,
      'stroke-opacity': 0.35,
      'aria-hidden': 'true',
    }),
  )
}

const label = (point: LocalPoint, frame: Frame, words: string, size: number): Drawing =>
  haloText(
    {
      x: frame.x(point),
      y: frame.y(point) + 4,
      'text-anchor': 'middle',
      'font-size': size,
      fill: paint('ink'),
    },
    words,
  )

const runNumbers = (input: GroundDrawingInput, frame: Frame): readonly Drawing[] => {
  const { runs } = input.passes[0]?.runs ?? { runs: [] }
  const each = runs.length > MOST_NUMBERS ? 5 : 1
  return runs.flatMap((run, index) =>
    index % each === 0 ? [label(run.from, frame, String(index + 1), 11)] : [],
  )
}

/** Where each load starts: its number and mass beside a ring. */
const loadMarks = (input: GroundDrawingInput, frame: Frame): readonly Drawing[] =>
  (input.loads ?? []).map((load) => {
    const words = `load ${load.load}, ${Math.round(load.massKg)} kg`
    const runs = `runs ${load.firstRun + 1} to ${load.lastRun + 1}`
    const ring = { cx: frame.x(load.from), cy: frame.y(load.from), r: 9 }
    return part('load', String(load.load), `${words}, ${runs}`, [
      draw('circle', { ...ring, fill: 'none', stroke: paint('ochre'), 'stroke-width': 2 }),
      label({ x: load.from.x, y: load.from.y + 16 / frame.pxPerM }, frame, words, 12),
    ])
  })

const NORTH_PX = 16

/** North arrow and a bar of ten metres. */
const scale = (frame: Frame, topPx: number): Drawing => {
  const barPx = 10 * frame.pxPerM
  const right = WIDTH_PX - MARGIN_PX
  return draw('g', { stroke: paint('ink'), fill: 'none' }, [
    draw('path', { d: `M${coordinate(right - barPx)} ${topPx - 4}v4h${coordinate(barPx)}v-4` }),
    draw(
      'text',
      { x: right - barPx / 2, y: topPx + 13, stroke: 'none', fill: paint('ink'), 'text-anchor': 'middle' },
      ['10 m'],
    ),
    draw('path', { d: `M${right} ${MARGIN_PX - 6 + NORTH_PX}v${-NORTH_PX}m-4 6l4 -6l4 6` }),
    draw('text', { x: right - 14, y: MARGIN_PX + 6, stroke: 'none', fill: paint('ink') }, ['N']),
  ])
}

const PASS_WORDS = ['First pass', 'Second pass'] as const

const legendLines = (input: GroundDrawingInput): readonly string[] => [
  ...input.passes.map(({ runs }, pass) => {
    const heading = headingWords(runs.headingDeg, input.twelveDeg ?? 0)
    const words = input.passes.length === 1 ? 'Runs' : (PASS_WORDS[pass] ?? PASS_WORDS[1])
    return `${words} ${heading}: ${counted(runs.runs.length, 'run', 'runs')}, ${Math.round(runs.runLengthM)} m`
  }),
  ...(input.isApproximate === true ? ['Outline not known: drawn on an ellipse of the same area.'] : []),
]

const legend = (input: GroundDrawingInput, topPx: number): readonly Drawing[] =>
  legendLines(input).map((words, k) => {
    const y = topPx + k * LEGEND_PX
    const style = PASS_STROKES[k]
    const isPass = k < input.passes.length && style !== undefined
    return draw('g', {}, [
      isPass
        ? draw('path', {
            d: `M${MARGIN_PX} ${y - 4}h26`,
            stroke: style.stroke,
            'stroke-width': 2,
            'stroke-dasharray': style.dash,
          })
        : null,
      draw('text', { x: MARGIN_PX + (isPass ? 34 : 0), y, fill: paint('ink'), 'font-size': 13 }, [words]),
    ])
  })

/**
 * A green seen from above, to scale, north up: its edge, islands, the runs in their order with arrows, a second pass in another stroke, dresser
 * loads told apart by dashes as well as by words, so that it holds on black and white paper.
 */
export const groundDrawing = (input: GroundDrawingInput): Drawing => {
  const frame = frameFor(input)
  const legendTop = frame.heightPx + 14
  const heightPx = legendTop + legendLines(input).length * LEGEND_PX + 8
  const passes = input.passes.map((_, pass) => pass).reverse()
  return sheet({ widthPx: WIDTH_PX, heightPx, label: `${input.name}: ${legendLines(input).join('; ')}` }, [
    patternDefinitions('ground', ['shut']),
    draw('rect', { width: WIDTH_PX, height: heightPx, fill: paint('paper') }),
    draw('g', { 'data-part': 'bands' }, bands(input, frame)),
    draw('path', {
      d: ringsData([input.polygon.outer], frame),
      fill: 'none',
      stroke: paint('leaf'),
      'stroke-width': 2.5,
      'stroke-linejoin': 'round',
    }),
    ...input.polygon.holes.map((hole, k) =>
      part('island', String(k + 1), 'kept clear', [
        draw('path', {
          d: ringsData([hole], frame),
          fill: patternFill('ground', 'shut'),
          stroke: paint('rust'),
        }),
      ]),
    ),
    ...passes.flatMap((pass) => passLines(input, pass, frame)),
    ...runNumbers(input, frame),
    ...loadMarks(input, frame),
    scale(frame, frame.heightPx - 4),
    ...legend(input, legendTop + 8),
  ])
}
