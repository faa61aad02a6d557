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
  readonly passes: readonly {
    readonly runs: Passes
    readonly widthM: number
    /** Which pass it is, from 0; its place in the list where left out. The first of the list is drawn full, the others faint. */
    readonly pass?: number
  }[]
  /** Dresser loads of the first pass: each gets a stroke of its own and a mark where it starts. */
  readonly loads?: readonly DresserLoad[]
  /** Bearing of twelve o'clock, degrees; north where it is not known. */
  readonly twelveDeg?: number
  /** True when the outline is an ellipse that stands in for the green. */
  readonly isApproximate?: boolean
  /** Bunkers beside the green; what lies off the sheet is cut off. */
  readonly bunkers?: readonly Ring[]
  /** Runs of the first pass driven so far: the last of them stands out, those still to come are faint. Left out: the whole pass, plain. */
  readonly drivenTo?: number
  /** Natural width, px; 640 where left out. */
  readonly widthPx?: number
}

const USUAL_WIDTH_PX = 640
const MARGIN_PX = 34
const LEGEND_PX = 22

/** Numbers nearer to each other than this would run together, px. */
const NUMBER_STEP_PX = 15

/** Runs between numbers, as few as there is room for. */
const NUMBER_STEPS = [1, 2, 5, 10, 20] as const

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
  readonly widthPx: number
  readonly heightPx: number
}

const frameFor = (input: GroundDrawingInput): Frame => {
  const { polygon, passes, widthPx = USUAL_WIDTH_PX } = input
  const points = [...polygon.outer, ...passes.flatMap(({ runs }) => runs.runs.flatMap((run) => run.path))]
  const xs = points.map((point) => point.x)
  const ys = points.map((point) => point.y)
  const [west, east] = [Math.min(...xs), Math.max(...xs)]
  const [south, north] = [Math.min(...ys), Math.max(...ys)]
  const pxPerM = (widthPx - 2 * MARGIN_PX) / Math.max(east - west, north - south)
  const leftPx = (widthPx - (east - west) * pxPerM) / 2
  return {
    widthPx,
    x: (point) => leftPx + (point.x - west) * pxPerM,
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
  const driven = pass === 0 ? input.drivenTo : undefined
  return runs.map((run, index) => {
    const load = loads.length === 0 ? undefined : loadOfRun(index, loads)
    const line = draw('path', {
      d: pathData(run.path, frame, run.kind === 'lap'),
      fill: 'none',
      stroke: style.stroke,
      'stroke-width': index + 1 === driven ? 4 : style.width,
      'stroke-opacity': driven !== undefined && index >= driven ? 0.25 : pass === 0 ? undefined : 0.7,
      'stroke-dasharray': load === undefined ? style.dash : LOAD_DASHES[load % LOAD_DASHES.length],
    })
    const title = runTitle(run, index, load)
    const isToCome = driven !== undefined && index >= driven
    const head = run.kind === 'straight' && !isToCome ? arrow(run, frame, style.stroke) : null
    return part('run', `${pass + 1}.${index + 1}`, title, [line, head])
  })
}

/** Bands as wide as the machine under the first pass, so that overlap shows darker. */
const bands = (input: GroundDrawingInput, frame: Frame): readonly Drawing[] => {
  const [first] = input.passes
  const loads = input.loads ?? []
  return (first?.runs.runs ?? []).map((run, index) => {
    const isDriven = input.drivenTo === undefined || index < input.drivenTo
    const isDark = loads.length > 0 && loadOfRun(index, loads) % 2 === 0
    return draw('path', {
      d: pathData(run.path, frame, run.kind === 'lap'),
      fill: 'none',
      stroke: paint(loads.length > 0 ? 'sand' : 'rule'),
      'stroke-width': (first?.widthM ?? 0) * frame.pxPerM,
      'stroke-opacity': isDriven ? (isDark ? 0.7 : 0.35) : 0.12,
      'aria-hidden': 'true',
    })
  })
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

/** Where words at the start of a run stand: a little before it, so that they lie off the green. */
const beforeStart = (run: Run, frame: Frame, backPx: number): LocalPoint => {
  const [, second = run.to] = run.path
  const [dx, dy] = [second.x - run.from.x, second.y - run.from.y]
  const length = Math.hypot(dx, dy) || 1
  const backM = backPx / frame.pxPerM / length
  return { x: run.from.x - dx * backM, y: run.from.y - dy * backM }
}

const numberStep = (input: GroundDrawingInput, frame: Frame, runs: readonly Run[]): number => {
  // Neighbouring starts lie at alternate ends, so numbers at one end are two runs apart.
  const apartPx = 2 * (input.passes[0]?.widthM ?? 1) * frame.pxPerM
  return NUMBER_STEPS.find((step) => step * apartPx >= NUMBER_STEP_PX || step >= runs.length) ?? 20
}

const runNumbers = (input: GroundDrawingInput, frame: Frame): readonly Drawing[] => {
  const { runs } = input.passes[0]?.runs ?? { runs: [] }
  const each = numberStep(input, frame, runs)
  const marked = new Set((input.loads ?? []).map((load) => load.firstRun))
  return runs.flatMap((run, index) =>
    index % each === 0 && index > 0 && !marked.has(index)
      ? [label(beforeStart(run, frame, 9), frame, String(index + 1), 11)]
      : [],
  )
}

/** Where the work begins: a ring, and the word. */
const startMark = (input: GroundDrawingInput, frame: Frame): readonly Drawing[] => {
  const [run] = input.passes[0]?.runs.runs ?? []
  if (run === undefined) return []
  const at = { cx: frame.x(run.from), cy: frame.y(run.from) }
  return [
    part('start', '1', 'start of run 1', [
      draw('circle', { ...at, r: 5, fill: paint('paper'), stroke: paint('ink'), 'stroke-width': 2.5 }),
      label(beforeStart(run, frame, 18), frame, 'start', 13),
    ]),
  ]
}

/** Where each load starts: its number in a disc. The first one's start is the start of the work. */
const loadMarks = (input: GroundDrawingInput, frame: Frame): readonly Drawing[] =>
  (input.loads ?? []).flatMap((load) => {
    const run = input.passes[0]?.runs.runs[load.firstRun]
    if (run === undefined) return []
    const words = `load ${load.load}, ${Math.round(load.massKg)} kg, runs ${load.firstRun + 1} to ${load.lastRun + 1}`
    const at = load.load === 1 ? run.from : beforeStart(run, frame, 12)
    const [cx, cy] = [frame.x(at), frame.y(at)]
    return [
      part('load', String(load.load), words, [
        draw('circle', { cx, cy, r: 9, fill: paint('ink'), stroke: paint('paper'), 'stroke-width': 1.5 }),
        draw(
          'text',
          {
            x: cx,
            y: cy + 4,
            'text-anchor': 'middle',
            'font-size': 12,
            'font-weight': 700,
            fill: paint('paper'),
          },
          [String(load.load)],
        ),
      ]),
    ]
  })

const NORTH_PX = 16

/** North arrow and a bar of ten metres. */
const scale = (frame: Frame, topPx: number): Drawing => {
  const barPx = 10 * frame.pxPerM
  const right = frame.widthPx - 14
  return draw('g', { stroke: paint('ink'), fill: 'none' }, [
    draw('path', { d: `M${coordinate(right - barPx)} ${topPx - 4}v4h${coordinate(barPx)}v-4` }),
    draw(
      'text',
      { x: right - barPx / 2, y: topPx + 12, stroke: 'none', fill: paint('ink'), 'text-anchor': 'middle' },
      ['10 m'],
    ),
    draw('path', { d: `M${right - 6} ${12 + NORTH_PX}v${-NORTH_PX}m-4 6l4 -6l4 6` }),
    draw('text', { x: right - 24, y: 26, stroke: 'none', fill: paint('ink') }, ['N']),
  ])
}

const PASS_WORDS = ['First pass', 'Second pass', 'Third pass'] as const

const legendLines = (input: GroundDrawingInput): readonly string[] => [
  ...input.passes.map(({ runs, pass }, place) => {
    const heading = headingWords(runs.headingDeg, input.twelveDeg ?? 0)
    const words = input.passes.length === 1 ? 'Runs' : (PASS_WORDS[pass ?? place] ?? 'Later pass')
    return `${words} ${heading}: ${counted(runs.runs.length, 'run', 'runs')}, ${Math.round(runs.runLengthM)} m`
  }),
  ...(input.isApproximate === true ? ['Outline not known: drawn on an ellipse of the same area.'] : []),
]

const LEFT_PX = 12

const sample = (y: number, attributes: Readonly<Record<string, string | number | undefined>>): Drawing =>
  draw('path', { d: `M${LEFT_PX} ${y - 4}h26`, 'stroke-width': 2, ...attributes })

const legend = (input: GroundDrawingInput, topPx: number): readonly Drawing[] =>
  legendLines(input).map((words, k) => {
    const y = topPx + k * LEGEND_PX
    const style = PASS_STROKES[k]
    const hasStroke = k > 0 || (input.loads ?? []).length === 0
    const isPass = k < input.passes.length && style !== undefined && hasStroke
    const line = isPass ? sample(y, { stroke: style.stroke, 'stroke-dasharray': style.dash }) : null
    const x = LEFT_PX + (isPass ? 34 : 0)
    return draw('g', {}, [line, draw('text', { x, y, fill: paint('ink'), 'font-size': 13 }, [words])])
  })

/** What each load is for, with its stroke. */
const loadLegend = (input: GroundDrawingInput, topPx: number): readonly Drawing[] =>
  (input.loads ?? []).map((load, k) => {
    const y = topPx + k * LEGEND_PX
    const dash = LOAD_DASHES[k % LOAD_DASHES.length]
    const words = `Load ${load.load}: runs ${load.firstRun + 1} to ${load.lastRun + 1}, ${Math.round(load.massKg)} kg`
    return draw('g', {}, [
      sample(y, { stroke: paint('ink'), 'stroke-dasharray': dash }),
      draw('text', { x: LEFT_PX + 34, y, fill: paint('ink'), 'font-size': 13 }, [words]),
    ])
  })

const bunkerShapes = (input: GroundDrawingInput, frame: Frame): readonly Drawing[] =>
  (input.bunkers ?? []).map((ring) =>
    draw('path', {
      d: ringsData([ring], frame),
      fill: paint('sand'),
      'fill-opacity': 0.5,
      stroke: paint('thatch'),
      'stroke-width': 1,
      'stroke-dasharray': '1 3',
    }),
  )

/**
 * A green seen from above, to scale, north up: its edge, islands, the runs in their order with arrows, a second pass in another stroke, dresser
 * loads told apart by dashes as well as by words, so that it holds on black and white paper.
 */
export const groundDrawing = (input: GroundDrawingInput): Drawing => {
  const frame = frameFor(input)
  const legendTop = frame.heightPx + 14
  const lines = legendLines(input).length
  const heightPx = legendTop + (lines + (input.loads?.length ?? 0)) * LEGEND_PX + 8
  const { widthPx } = frame
  const passes = input.passes.map((_, pass) => pass).reverse()
  return sheet({ widthPx, heightPx, label: `${input.name}: ${legendLines(input).join('; ')}` }, [
    patternDefinitions('ground', ['shut']),
    draw('rect', { width: widthPx, height: heightPx, fill: paint('paper') }),
    draw('g', { 'data-part': 'bunkers' }, bunkerShapes(input, frame)),
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
    ...startMark(input, frame),
    ...loadMarks(input, frame),
    scale(frame, frame.heightPx - 4),
    ...legend(input, legendTop + 8),
    ...loadLegend(input, legendTop + 8 + lines * LEGEND_PX),
  ])
}
