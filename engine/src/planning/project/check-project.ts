import type { Project } from './project.ts'

/** What is wrong with the starts of a project. Activities and resources count from 0. */
export type ProjectFault =
  | { readonly type: 'countOfStarts'; readonly activities: number; readonly starts: number }
  | { readonly type: 'startBeforeZero'; readonly activity: number; readonly start: number }
  | {
      readonly type: 'lagBroken'
      readonly from: number
      readonly to: number
      /** The lag asked for, start to start, and the one found. */
      readonly least: number
      readonly found: number
    }
  | {
      readonly type: 'overCapacity'
      readonly resource: number
      /** First time unit at which the use passes the capacity. */
      readonly time: number
      readonly use: number
      readonly capacity: number
    }

/**
 * Checks a schedule against its project: every lag, and every resource at every moment at which an activity begins. Knows nothing of how the
 * schedule was found, and shares no code with any search. An empty list means that the schedule stands.
 *
 * @param starts start of each activity, whole time units.
 */
export const checkProject = (project: Project, starts: Int32Array): readonly ProjectFault[] => {
  const activities = project.durations.length
  if (starts.length !== activities) return [{ type: 'countOfStarts', activities, starts: starts.length }]
  return [...earlyFaults(starts), ...lagFaults(project, starts), ...capacityFaults(project, starts)]
}

/** Latest finish of any activity: the length of the project under these starts. */
export const makespanOf = (project: Project, starts: Int32Array): number => {
  let latest = 0
  project.durations.forEach((duration, activity) => {
    latest = Math.max(latest, (starts[activity] ?? 0) + duration)
  })
  return latest
}

const earlyFaults = (starts: Int32Array): readonly ProjectFault[] => {
  const faults: ProjectFault[] = []
  starts.forEach((start, activity) => {
    if (start < 0) faults.push({ type: 'startBeforeZero', activity, start })
  })
  return faults
}

const lagFaults = (project: Project, starts: Int32Array): readonly ProjectFault[] => {
  const faults: ProjectFault[] = []
  project.lagFrom.forEach((from, arc) => {
    const to = project.lagTo[arc] ?? -1
    const least = project.lagMin[arc] ?? 0
    const found = (starts[to] ?? Number.NaN) - (starts[from] ?? Number.NaN)
    if (!(found >= least)) faults.push({ type: 'lagBroken', from, to, least, found })
  })
  return faults
}

/** Use only rises when an activity begins, so those moments are enough. */
const capacityFaults = (project: Project, starts: Int32Array): readonly ProjectFault[] => {
  const moments = [...new Set(starts)].sort((a, b) => a - b)
  const resources = [...project.capacities.keys()]
  return resources.flatMap((resource): readonly ProjectFault[] => {
    const capacity = project.capacities[resource] ?? 0
    for (const time of moments) {
      const use = useAt(project, { starts, resource, time })
      if (use > capacity) return [{ type: 'overCapacity', resource, time, use, capacity }]
    }
    return []
  })
}

const useAt = (
  project: Project,
  at: { readonly starts: Int32Array; readonly resource: number; readonly time: number },
): number => {
  let use = 0
  at.starts.forEach((start, activity) => {
    const runs = start <= at.time && at.time < start + (project.durations[activity] ?? 0)
    if (runs) use += project.demands[activity * project.capacities.length + at.resource] ?? 0
  })
  return use
}
