import {
  bestHeading,
  checkedPolygon,
  coverageOf,
  isOnGreen,
  TYPICAL_MACHINES,
  type PassSettings,
  type Polygon,
} from '@swardwright/engine'

const GREENS = 19
const ROUNDS = 15
const GOAL_MS = 200

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

const planned = (polygon: Polygon, settings: PassSettings) => {
  const best = bestHeading(polygon, settings)
  const [passes] = best.ok ? best.value.passes : []
  if (passes === undefined) throw new Error('there is always a heading without bans')
  return passes
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

/** Milliseconds of processor time that some work takes: other programs on the machine count little. */
const processorMs = (work: () => void): number => {
  const before = process.cpuUsage()
  work()
  return process.cpuUsage(before).user / 1000
}

const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0

const rounds = (work: () => void): { readonly firstMs: number; readonly medianMs: number } => {
  const firstMs = processorMs(work)
  return { firstMs, medianMs: median(Array.from({ length: ROUNDS }, () => processorMs(work))) }
}

/** `bench ground`: all operations of the chain over 19 greens, each at its best heading, against a plain raster sweep in the same run. */
export const run = (argv: readonly string[]): Promise<number> => {
  if (argv.length > 0) {
    process.stderr.write(`unexpected '${argv[0]}'\n`)
    return Promise.resolve(2)
  }
  const tasks = greens().flatMap((polygon) => CHAIN.map((kind) => ({ polygon, settings: settingsFor(kind) })))
  const headings = rounds(() => tasks.forEach(({ polygon, settings }) => planned(polygon, settings)))
  const plans = tasks.map(({ polygon, settings }) => ({
    polygon,
    settings,
    passes: planned(polygon, settings),
  }))
  const areas = rounds(() => plans.forEach((plan) => coverageOf(plan.polygon, plan.settings, plan.passes)))
  const sweepMs = processorMs(() => tasks.forEach(({ polygon, settings }) => rasterSweep(polygon, settings)))
  const lines = [
    `${GREENS} greens x ${CHAIN.length} operations = ${tasks.length} passes, processor time on one core`,
    `best heading, runs and order: ${headings.medianMs.toFixed(0)} ms (median of ${ROUNDS}; first round ${headings.firstMs.toFixed(0)} ms); goal ${GOAL_MS} ms ${headings.medianMs <= GOAL_MS ? 'kept' : 'missed'}`,
    `areas covered, twice, missed: ${areas.medianMs.toFixed(0)} ms more`,
    `plain raster sweep (${RASTER_M} m, every ${RASTER_STEP_DEG} degrees): ${sweepMs.toFixed(0)} ms, ${(sweepMs / headings.medianMs).toFixed(1)} times as long`,
  ]
  process.stdout.write(`${lines.join('\n')}\n`)
  return Promise.resolve(0)
}
