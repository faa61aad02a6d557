import { isRecord } from '../../is-record.ts'
import { fail, ok, type Result } from '../../result.ts'
import type { Project } from './project.ts'

/** A set of projects with what its collectors say of each. The searches never see these figures. */
export type ProjectSet = {
  readonly set: string
  readonly instances: readonly ProjectInstance[]
}

/** One project of a set. */
export type ProjectInstance = {
  readonly name: string
  readonly project: Project
  /** Shortest makespan known to its collectors; null where none is told. */
  readonly bestKnown: number | null
}

/** What is wrong with a file of projects: where, what stands there, and what may. */
export type ProjectFileError = {
  readonly at: string
  readonly expected: string
  readonly found: string
}

/** Largest figure taken: durations and lags summed over a project stay far inside 32 bits. */
const MOST = 1_000_000
/** Longest horizon taken, time units: it bounds the memory that a search needs. */
const LONGEST = 20_000_000

class Misread extends Error {
  readonly at: string
  readonly expected: string
  readonly found: unknown
  constructor(at: string, expected: string, found: unknown) {
    super(at)
    this.at = at
    this.expected = expected
    this.found = found
  }
}

const shown = (value: unknown): string => (JSON.stringify(value) ?? 'nothing').slice(0, 60)

const record = (value: unknown, at: string): Readonly<Record<string, unknown>> => {
  if (!isRecord(value)) throw new Misread(at, 'an object', value)
  return value
}

const list = (value: unknown, at: string, length?: number): readonly unknown[] => {
  if (!Array.isArray(value)) throw new Misread(at, 'a list', value)
  if (length !== undefined && value.length !== length)
    throw new Misread(at, `a list of ${length}`, `a list of ${value.length}`)
  return value
}

const whole = (value: unknown, at: string, least: number, most: number): number => {
  if (typeof value !== 'number' || !Number.isInteger(value) || value < least || value > most)
    throw new Misread(at, `a whole number from ${least} to ${most}`, value)
  return value
}

const wholes = (value: unknown, at: string, least: number, length?: number): Int32Array =>
  Int32Array.from(list(value, at, length), (entry, index) => whole(entry, `${at}[${index}]`, least, MOST))

type Lag = readonly [from: number, to: number, least: number]

const lagsOf = (
  raw: Readonly<Record<string, unknown>>,
  at: string,
  durations: Int32Array,
): readonly Lag[] => {
  const last = durations.length - 1
  if (raw.lags !== undefined)
    return list(raw.lags, `${at}.lags`).map((entry, index): Lag => {
      const here = `${at}.lags[${index}]`
      const [from, to, least] = list(entry, here, 3)
      return [
        whole(from, `${here}[0]`, 0, last),
        whole(to, `${here}[1]`, 0, last),
        whole(least, `${here}[2]`, -MOST, MOST),
      ]
    })
  return list(raw.successors, `${at}.successors`, durations.length).flatMap((after, activity) =>
    list(after, `${at}.successors[${activity}]`).map((to, index): Lag => [
      activity,
      whole(to, `${at}.successors[${activity}][${index}]`, 0, last),
      durations[activity] ?? 0,
    ]),
  )
}

const demandsOf = (
  raw: unknown,
  at: string,
  { durations, capacities }: Pick<Project, 'durations' | 'capacities'>,
): Int32Array => {
  const rows = list(raw, at, durations.length)
  const demands = new Int32Array(durations.length * capacities.length)
  rows.forEach((row, activity) => {
    const uses = list(row, `${at}[${activity}]`, capacities.length)
    // More than the capacity reads well: published sets hold such projects, and that nothing can carry them out is for the search to prove.
    uses.forEach((use, resource) => {
      demands[activity * capacities.length + resource] = whole(
        use,
        `${at}[${activity}][${resource}]`,
        0,
        MOST,
      )
    })
  })
  return demands
}

const projectOf = (raw: Readonly<Record<string, unknown>>, at: string): Project => {
  const durations = wholes(raw.durations, `${at}.durations`, 0)
  if (durations.length < 2) throw new Misread(`${at}.durations`, 'at least the two dummies', durations.length)
  const capacities = wholes(raw.capacities, `${at}.capacities`, 0)
  if (capacities.length === 0) throw new Misread(`${at}.capacities`, 'at least one resource', 0)
  const demands = demandsOf(raw.demands, `${at}.demands`, { durations, capacities })
  const lags = lagsOf(raw, at, durations)
  const length =
    lags.reduce((sum, [, , least]) => sum + Math.abs(least), 0) + durations.reduce((a, b) => a + b, 0)
  if (length > LONGEST) throw new Misread(at, `durations and lags that sum to at most ${LONGEST}`, length)
  return {
    durations,
    capacities,
    demands,
    lagFrom: Int32Array.from(lags, ([from]) => from),
    lagTo: Int32Array.from(lags, ([, to]) => to),
    lagMin: Int32Array.from(lags, ([, , least]) => least),
    hasMaxLags: lags.some(([, , least]) => least < 0),
  }
}

const instanceOf = (name: string, value: unknown): ProjectInstance => {
  const at = `instances.${name}`
  const raw = record(value, at)
  const { bestKnown } = raw
  return {
    name,
    project: projectOf(raw, at),
    bestKnown:
      bestKnown === undefined || bestKnown === null ? null : whole(bestKnown, `${at}.bestKnown`, 0, LONGEST),
  }
}

/**
 * Reads projects from their common form: `{set, instances: {name: {capacities, durations, demands, successors | lags, bestKnown?}}}`.
 * Activities count from 0; `successors` wait for the finish, `lags` are `[from, to, least start-to-start lag]`.
 */
export const readProjects = (value: unknown): Result<ProjectSet, ProjectFileError> => {
  try {
    const raw = record(value, 'file')
    if (typeof raw.set !== 'string') throw new Misread('set', 'a name', raw.set)
    const instances = Object.entries(record(raw.instances, 'instances')).map(([name, entry]) =>
      instanceOf(name, entry),
    )
    return ok({ set: raw.set, instances })
  } catch (error) {
    if (!(error instanceof Misread)) throw error
    return fail({ at: error.at, expected: error.expected, found: shown(error.found) })
  }
}
