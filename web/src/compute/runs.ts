import {
  bansFromLastTimes,
  bansBroken,
  bestHeading,
  coverageOf,
  crossSlopeBan,
  crossSlopePercent,
  deriveOperations,
  greenShape,
  groupOf,
  lonLat,
  machinesFor,
  planeAt,
  planPasses,
  polygonOf,
  runsTowards,
  sandRuns,
  workingSpeedMPerS,
  type Course,
  type Green,
  type HeadingBan,
  type Machine,
  type Operation,
  type Passes,
  type PassSettings,
  type Polygon,
  type PrescriptionGroup,
} from '@swardwright/engine'
import type { LoadsTold, PassTold, RunsAsk, RunsChoice, RunsTold } from './runs-told.ts'

/** Next time's heading lies at least so far from the last one, degrees: less and the ruts grow together (common practice, no source). */
const APART_DEG = 15

/** A slope felt sideways beyond this is told, %: half of what most ride-on machines are declared for (our assumption). */
const CROSS_SLOPE_PERCENT = 10

/** Ground needed beyond the edge to lift and come round, m (our assumption). */
const TURNING_ROOM_M = 3

/** Angle of a later pass from the one before: cuts go square, all else slightly turned (common practice, no source). */
export const usualTurnDeg = (operation: Operation): number => (operation === 'cut' ? 90 : 15)

const KG_PER_T = 1000

const isAlike = (a: Machine, b: Machine): boolean =>
  a.widthM === b.widthM && a.overlapM === b.overlapM && a.speedMPerS === b.speedMPerS && a.turnS === b.turnS

type Step = PrescriptionGroup['chain'][number]
type Way = RunsChoice & { readonly step: Step }

const choiceOf = ({ key, operation, machine, passes }: Way): RunsChoice => ({
  key,
  operation,
  machine,
  passes,
})

/** Each step with each machine that can do it; of machines that work alike only the first. */
const waysOf = (course: Course, chain: readonly Step[]): readonly Way[] =>
  chain.flatMap((step, at) => {
    const able = machinesFor(course, step.operation)
    return able
      .filter((machine, k) => !able.slice(0, k).some((earlier) => isAlike(earlier, machine)))
      .map((machine) => ({
        key: `${at + 1}.${machine.id}`,
        operation: step.operation,
        machine,
        passes: step.passes,
        step,
      }))
  })

const settingsOf = ({ machine, step }: Way): PassSettings => ({
  widthM: machine.widthM,
  overlapM: machine.overlapM,
  speedMPerS: workingSpeedMPerS(machine, step),
  turnS: machine.turnS,
  turnRadiusM: 0,
  turnStyle: 'lift',
  laps: 0,
  order: 'backAndForth',
})

const bunkersOf = (course: Course, green: Green): RunsTold['bunkers'] => {
  const origin = lonLat(green.at[0], green.at[1])
  if (!origin.ok) return []
  const { toLocal } = planeAt(origin.value)
  return course.places.flatMap(({ kind, name, outline }) => {
    const [outer] = kind === 'bunker' ? (outline ?? []) : []
    if (outer === undefined) return []
    const ring = outer.slice(0, -1).flatMap(([lonDeg, latDeg]) => {
      const place = lonLat(lonDeg, latDeg)
      return place.ok ? [toLocal(place.value)] : []
    })
    return ring.some(({ x, y }) => Math.hypot(x, y) < 60) ? [{ name, ring }] : []
  })
}

/** Best passes that keep as many of the wishes as can be kept: last time's heading is given up before the slope. */
const bestPasses = (
  polygon: Polygon,
  settings: PassSettings,
  offsetsDeg: readonly number[],
  bans: readonly HeadingBan[],
): { readonly passes: readonly Passes[]; readonly dropped: readonly HeadingBan['reason'][] } => {
  const slope = bans.filter((ban) => ban.reason === 'slope')
  for (const kept of [bans, slope, []]) {
    const best = bestHeading(polygon, settings, { bans: kept, offsetsDeg })
    if (best.ok)
      return {
        passes: best.value.passes,
        dropped: bans.filter((ban) => !kept.includes(ban)).map((ban) => ban.reason),
      }
  }
  throw new Error('without bans there is always a heading')
}

const extentAcrossM = ({ outer }: Polygon, headingDeg: number): number => {
  const angle = (headingDeg * Math.PI) / 180
  const across = outer.map(({ x, y }) => x * Math.cos(angle) - y * Math.sin(angle))
  return Math.max(...across) - Math.min(...across)
}

const timeOf = (passes: readonly Passes[]): number => passes.reduce((sum, pass) => sum + pass.timeMin, 0)

/** Sand shared over the runs by their length, so that loads add up to what the green needs: the gate is shut past the edge. */
const loadsOf = (green: Green, ask: RunsAsk, way: Way, pass: Passes): LoadsTold | null => {
  const { machine } = way
  if (way.operation !== 'dress' || machine.hopperT === undefined) return null
  const derived = deriveOperations(ask.course, ask.prescription)
  const work = derived.ok ? derived.value.works.find((one) => one.green.id === green.id) : undefined
  if (work === undefined) return null
  const boutM = machine.widthM - machine.overlapM
  const dressings = work.group.chain.reduce(
    (sum, step) => sum + (step.operation === 'dress' ? step.passes : 0),
    0,
  )
  const massKg = (work.sand.bandT.likely * KG_PER_T) / dressings
  const rateKgPerM2 = massKg / (pass.runLengthM * boutM)
  const split = sandRuns(pass.runs, { boutM, rateKgPerM2, hopperKg: machine.hopperT * KG_PER_T })
  return {
    loads: split.ok ? split.value.loads : [],
    error: split.ok ? null : split.error,
    boutM,
    rateKgPerM2,
    planned: Math.ceil(work.sand.loads / dressings),
  }
}

/** The wishes that a heading is to keep: off last time's, and not across the slope. */
const bansFor = (green: Green, lastDeg: number | null): readonly HeadingBan[] => {
  const { slope } = green
  const across =
    slope === undefined ? undefined : crossSlopeBan(slope.percent, slope.fallDeg, CROSS_SLOPE_PERCENT)
  const last = bansFromLastTimes(lastDeg === null ? [] : [lastDeg], APART_DEG)
  return across === undefined ? last : [...last, across]
}

const feltAcross = (slope: Green['slope'], headingDeg: number): number | null => {
  if (slope === undefined) return null
  const percent = crossSlopePercent(slope.percent, slope.fallDeg, headingDeg)
  return percent > CROSS_SLOPE_PERCENT ? percent : null
}

type Bunkers = RunsTold['bunkers']

const toldOf = (green: Green, polygon: Polygon, settings: PassSettings, bunkers: Bunkers) => {
  const { slope } = green
  const room = { widthM: settings.widthM, roomM: TURNING_ROOM_M }
  return (passes: Passes): PassTold => ({
    passes,
    areas: coverageOf(polygon, settings, passes),
    extentM: extentAcrossM(polygon, passes.headingDeg),
    acrossPercent: feltAcross(slope, passes.headingDeg),
    towards: bunkers.flatMap(({ name, ring }) => {
      const runs = runsTowards(passes.runs, ring, room).map((run) => run + 1)
      return runs.length === 0 ? [] : [{ place: name, runs }]
    }),
  })
}

/** The runs of one step of the prescription over one green; null where the prescription has nothing for a machine to do there. */
export const greenRuns = (ask: RunsAsk): RunsTold | null => {
  const { course, headingDeg } = ask
  const green = course.greens.find((one) => one.id === ask.green)
  const ways = waysOf(course, groupOf(ask.prescription, ask.green)?.chain ?? [])
  const way = ways.find((one) => one.key === ask.key) ?? ways[0]
  if (green === undefined || way === undefined) return null
  const polygon = polygonOf(greenShape(green))
  const settings = settingsOf(way)
  const turnDeg = ask.turnDeg ?? usualTurnDeg(way.operation)
  const offsetsDeg = Array.from({ length: way.passes }, (_, pass) => pass * turnDeg)
  const lastDeg = ask.lastDeg[way.operation] ?? null
  const bans = bansFor(green, lastDeg)
  const best = bestPasses(polygon, settings, offsetsDeg, bans)
  const passes =
    headingDeg === null
      ? best.passes
      : offsetsDeg.map((offsetDeg) => planPasses(polygon, settings, headingDeg + offsetDeg))
  const bunkers = bunkersOf(course, green)
  const [first] = passes
  if (first === undefined) return null
  const isNearLast = bansBroken(first.headingDeg, bans).some((ban) => ban.reason === 'lastTime')
  return {
    choices: ways.map(choiceOf),
    choice: choiceOf(way),
    settings,
    polygon,
    isApproximate: green.outline === undefined,
    turnDeg,
    told: passes.map(toldOf(green, polygon, settings, bunkers)),
    reason: {
      by: headingDeg === null ? 'best' : 'chosen',
      lastDeg,
      dropped: headingDeg === null ? best.dropped : [],
      isNearLast,
      bestMin: headingDeg === null ? null : timeOf(best.passes),
    },
    sand: loadsOf(green, ask, way, first),
    bunkers,
  }
}
