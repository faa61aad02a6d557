import { frameOf, normalHeadingDeg, pointAt } from './heading-frame.ts'
import { insetRings } from './inset.ts'
import { drivenMinutes, turnMinutes } from './pass-minutes.ts'
import type { PassSettings } from './pass-settings.ts'
import type { LocalPoint } from './plane.ts'
import { distanceM, ringLengthM, ringsOf, type Polygon, type Ring } from './polygon.ts'
import { rowsForTurn } from './row-order.ts'
import { orderedRuns, type DrivenRun } from './run-order.ts'
import { stripLayer, type StripLayer } from './strips.ts'

/** One run in working order. A lap starts and ends at the same point and keeps its line in `path`. */
export type Run = {
  readonly kind: 'straight' | 'lap'
  readonly from: LocalPoint
  readonly to: LocalPoint
  readonly lengthM: number
  /** The line driven: two points for a straight run, a closed ring (first point not repeated) for a lap. */
  readonly path: readonly LocalPoint[]
}

/** A whole pass over one green. */
export type Passes = {
  /** Compass degrees of the straight runs, 0 to under 360. */
  readonly headingDeg: number
  /** Laps first, then straight runs, in working order. */
  readonly runs: readonly Run[]
  readonly runLengthM: number
  /** One between each run and the next: `runs - 1`. */
  readonly turns: number
  /** Length of all turns with the ways between pieces of the green, m. */
  readonly turnLengthM: number
  /** Of that, the ways between pieces of the green that do not adjoin, m. */
  readonly transferM: number
  /** Net: the machine at work, min. */
  readonly runMin: number
  /** Turns and ways between pieces, min. */
  readonly turnMin: number
  /** Gross: `runMin + turnMin`. Filling, emptying and the way to the green are not in it. */
  readonly timeMin: number
}

/** What stays the same whatever the heading: the laps and the ground left inside them. */
export type PassGround = {
  readonly laps: readonly Run[]
  /** Turns from lap to lap and into the straight runs, m. */
  readonly lapTurnM: number
  /** Rings that the straight runs cover. */
  readonly cover: readonly Ring[]
  readonly strips: StripLayer
}

/** A ring begun at another of its points, the nearest to `near`. */
const begunNear = (ring: Ring, near: LocalPoint): Ring => {
  let best = 0
  ring.forEach((point, k) => {
    const current = ring[best]
    if (current !== undefined && distanceM(point, near) < distanceM(current, near)) best = k
  })
  return [...ring.slice(best), ...ring.slice(0, best)]
}

const lapRun = (ring: Ring): readonly Run[] => {
  const [from] = ring
  return from === undefined ? [] : [{ kind: 'lap', from, to: from, lengthM: ringLengthM(ring), path: ring }]
}

/**
 * Laps round the edge and what they leave. Lap k runs with its middle at `k step + width / 2` from the edge; the straight runs then cover
 * what lies further in than `laps x step`.
 */
export const passGround = (polygon: Polygon, settings: PassSettings): PassGround => {
  const rings = ringsOf(polygon)
  const { widthM, overlapM } = settings
  const stepM = widthM - overlapM
  const laps: Run[] = []
  let lapTurnM = 0
  for (let k = 0; k < settings.laps; k++)
    for (const ring of insetRings(rings, k * stepM + widthM / 2)) {
      const last = laps[laps.length - 1]
      const [lap] = lapRun(last === undefined ? ring : begunNear(ring, last.to))
      if (lap === undefined) continue
      if (last !== undefined) lapTurnM += distanceM(last.to, lap.from)
      laps.push(lap)
    }
  const cover = settings.laps > 0 ? insetRings(rings, settings.laps * stepM) : [polygon.outer]
  return { laps, lapTurnM, cover, strips: stripLayer({ cover, blocked: polygon.holes, widthM, overlapM }) }
}

const straightRun = (run: DrivenRun, headingDeg: number): Run => {
  const frame = frameOf(headingDeg)
  const from = pointAt(frame, run.startU, run.v)
  const to = pointAt(frame, run.endU, run.v)
  return { kind: 'straight', from, to, lengthM: Math.abs(run.endU - run.startU), path: [from, to] }
}

/** Minutes between runs. Where the machine's own turn time is not told, a turn takes its length at working speed. */
const betweenRunsMin = (turns: number, turnM: number, transferM: number, settings: PassSettings): number =>
  settings.turnS === undefined
    ? drivenMinutes(turnM + transferM, settings.speedMPerS)
    : turnMinutes(turns, settings.turnS, transferM, settings.speedMPerS)

/** The pass at a given heading over prepared ground. `headingDeg` is any compass angle. */
export const passesAt = (ground: PassGround, settings: PassSettings, headingDeg: number): Passes => {
  const stepM = settings.widthM - settings.overlapM
  const reach = settings.order === 'skip' ? rowsForTurn(settings.turnRadiusM, stepM) : 1
  const rule = { radiusM: settings.turnRadiusM, style: settings.turnStyle, reach }
  const order = orderedRuns(ground.strips.runs(headingDeg), rule)
  const straight = order.runs.map((run) => straightRun(run, headingDeg))
  const lastLap = ground.laps[ground.laps.length - 1]
  const [firstStraight] = straight
  const fromLapsM = lastLap && firstStraight ? distanceM(lastLap.to, firstStraight.from) : 0
  const runs = [...ground.laps, ...straight]
  const runLengthM = runs.reduce((sum, run) => sum + run.lengthM, 0)
  const turns = Math.max(0, runs.length - 1)
  const turnM = order.turnM + ground.lapTurnM + fromLapsM
  const { transferM } = order
  const runMin = drivenMinutes(runLengthM, settings.speedMPerS)
  const turnMin = betweenRunsMin(turns, turnM, transferM, settings)
  const times = { runMin, turnMin, timeMin: runMin + turnMin }
  return {
    headingDeg: normalHeadingDeg(headingDeg),
    runs,
    runLengthM,
    turns,
    turnLengthM: turnM + transferM,
    transferM,
    ...times,
  }
}

/** The pass over a checked outline at a given heading; settings must be checked (`checkedPassSettings`). */
export const planPasses = (polygon: Polygon, settings: PassSettings, headingDeg: number): Passes =>
  passesAt(passGround(polygon, settings), settings, headingDeg)
