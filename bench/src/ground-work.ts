import {
  bestHeading,
  checkedPolygon,
  coverageOf,
  isOnGreen,
  TYPICAL_MACHINES,
  type PassSettings,
  type Polygon,
} from '@swardwright/engine'
import { median } from './median.ts'

const GREENS = 19
const ROUNDS = 15

/** The machines of the usual chain, in its order: every operation is planned for itself, the same widths too. */
const CHAIN = [
  'corer',
  'scarifier',
  'scarifier',
  'collector',
  'brush',
  'blower',
  'mower',
  'mower',
  'dresser',
  'dragMat',
  'roller',
] as const

/** Grid and heading step of the plain sweep: coarser in both than what it is compared with. */
const RASTER_M = 0.25
const RASTER_STEP_DEG = 5

/** Wavy greens of about 450 m2, made up by formula. */
const greens = (): readonly Polygon[] =>
  Array.from({ length: GREENS }, (_, n) => {
    const outer = Array.from({ length: 60 }, (_, k) => {
      const angle = (2 * Math.PI * k) / 60
      const r = 12 + 1.8 * Math.sin(2 * angle + n) + 0.9 * Math.cos(3 * angle + 2 * n)
      return { x: r * Math.cos(angle), y: r * Math.sin(angle) }
    })
    const checked = checkedPolygon({ outer, holes: [] })
    if (!checked.ok) throw new Error(`green ${n} is ${checked.error.type}`)
    return checked.value
  })

const settingsFor = (kind: (typeof CHAIN)[number]): PassSettings => {
  const { widthM, overlapM, speedMPerS, turnS } = TYPICAL_MACHINES[kind]
  return {
    widthM,
    overlapM,
    speedMPerS,
    turnS,
    turnRadiusM: 0,
    turnStyle: 'lift',
    laps: 0,
    order: 'backAndForth',
  }
}

/** Best heading, runs and their order, and the areas that are told of them. */
const planned = (polygon: Polygon, settings: PassSettings) => {
  const best = bestHeading(polygon, settings)
  const [passes] = best.ok ? best.value.passes : []
  if (passes === undefined) throw new Error('there is always a heading without bans')
  return { passes, areas: coverageOf(polygon, settings, passes) }
}

/** The plain way: points of a grid on the green, sorted into strips at each heading; the least time wins. */
const rasterSweep = (polygon: Polygon, settings: PassSettings): number => {
  const points: { readonly x: number; readonly y: number }[] = []
  for (let x = -16; x <= 16; x += RASTER_M)
    for (let y = -16; y <= 16; y += RASTER_M) if (isOnGreen({ x, y }, polygon)) points.push({ x, y })
  const stepM = settings.widthM - settings.overlapM
  let leastS = Infinity
  for (let headingDeg = 0; headingDeg < 180; headingDeg += RASTER_STEP_DEG) {
    const [sin, cos] = [Math.sin((headingDeg * Math.PI) / 180), Math.cos((headingDeg * Math.PI) / 180)]
    const least = new Float64Array(200).fill(Infinity)
    const most = new Float64Array(200).fill(-Infinity)
    for (const { x, y } of points) {
      const strip = Math.floor((x * cos - y * sin + 20) / stepM)
      const u = x * sin + y * cos
      least[strip] = Math.min(least[strip] ?? 0, u)
      most[strip] = Math.max(most[strip] ?? 0, u)
    }
    const lengthsM = [...most].map((end, k) => end - (least[k] ?? 0)).filter((lengthM) => lengthM > 0)
    const lengthM = lengthsM.reduce((sum, strip) => sum + strip, 0)
    leastS = Math.min(leastS, lengthM / settings.speedMPerS + lengthsM.length * (settings.turnS ?? 0))
  }
  return leastS / 60
}

/** What was measured, ms. */
export type GroundFigures = {
  readonly greens: number
  readonly operations: number
  readonly rounds: number
  /** The first round, with code still being made ready, and the median of the rounds after it. */
  readonly firstMs: number
  readonly medianMs: number
  /** The quickest of those rounds: the one that other programs disturbed least. */
  readonly leastMs: number
  /** The plain raster sweep, once. */
  readonly sweepMs: number
}

/** How the plain sweep is set, for those who read the figures. */
export const SWEEP_WORDS = `${RASTER_M} m, every ${RASTER_STEP_DEG} degrees`

/**
 * All operations of the chain over 19 greens, each at its best heading, with areas, and a plain raster sweep of the same in the same run.
 * `clockMs` counts on while work is done: processor time or the wall's.
 */
export const measureGround = (clockMs: () => number): GroundFigures => {
  const tookMs = (work: () => void): number => {
    const before = clockMs()
    work()
    return clockMs() - before
  }
  const tasks = greens().flatMap((polygon) => CHAIN.map((kind) => ({ polygon, settings: settingsFor(kind) })))
  const round = () => tookMs(() => tasks.forEach(({ polygon, settings }) => planned(polygon, settings)))
  const firstMs = round()
  const roundsMs = Array.from({ length: ROUNDS }, round)
  const medianMs = median(roundsMs)
  const leastMs = Math.min(...roundsMs)
  const sweepMs = tookMs(() => tasks.forEach(({ polygon, settings }) => rasterSweep(polygon, settings)))
  return { greens: GREENS, operations: CHAIN.length, rounds: ROUNDS, firstMs, medianMs, leastMs, sweepMs }
}
