import type { BoundFrame } from './bound-frame.ts'
import { isInTime, type Job } from './preemptive.ts'
import type { Resource } from './resource.ts'
import { latestOf, soonestStart, type ByWindow } from './time-tables.ts'

const dayStart = ({ ground }: BoundFrame, minute: number): number =>
  ground.problem.days.findLast((day) => day.startMin <= minute)?.startMin ?? 0

/** The jobs of a resource, by green, with releases from one table and deadlines from another, on the scale of its capacity. */
const jobsByGreen = (
  frame: BoundFrame,
  { demands, capacity, looseLeads }: Resource,
  soonest: ByWindow,
  latest: ByWindow,
): readonly (readonly Job[])[] => {
  const jobs = frame.ground.greens.map((): Job[] => [])
  const add = (green: number, from: number, to: number, minutes: number): void => {
    if (minutes > 0) jobs[green]?.push({ release: capacity.upTo(from), deadline: capacity.upTo(to), minutes })
  }
  for (const { green, step, workMin, leadMin } of demands) {
    const from = soonestStart(soonest, green, step)
    const to = latestOf(latest, green, step)
    add(green, looseLeads ? dayStart(frame, from) : from - leadMin, to.start, leadMin)
    add(green, from, to.end, workMin)
  }
  return jobs
}

/**
 * Whether a resource can do all its work by `untilMin`, each step between the soonest and the latest minute that its own chain allows (heads and tails over
 * calendars), if work could be broken off and shared at will. With a first green to be checked: whether that holds for some first green.
 */
export const fitsInSequence = (frame: BoundFrame, resource: Resource, untilMin: number): boolean => {
  const latest = frame.latest(untilMin)
  const plain = jobsByGreen(frame, resource, frame.soonest, latest)
  if (!isInTime(plain.flat())) return false
  if (frame.firsts.length === 0) return true
  const later = jobsByGreen(frame, resource, frame.afterCheck, latest)
  if (isInTime(later.flat())) return true
  return frame.firsts.some((first) =>
    isInTime(later.flatMap((jobs, green) => (green === first ? (plain[green] ?? []) : jobs))),
  )
}
