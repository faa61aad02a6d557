import { fail, ok, type Result } from '../result.ts'
import type { Grid } from './forecast-times.ts'
import {
  conversionOf,
  VARIABLE_NAMES,
  VARIABLES,
  type UnitError,
  type Variable,
  type VariableName,
} from './forecast-units.ts'
import { HOUR_MS } from './hours.ts'

/** What is missing in a column, and from which label to which (both included), epoch ms. */
export type Gap = {
  /** The column as the answer names it; `time` for labels that no row has. */
  readonly column: string
  readonly fromMs: number
  readonly toMs: number
  readonly why: 'null' | 'notANumber' | 'outOfRange' | 'columnShort' | 'noRow'
}

/** Why columns cannot be read. */
export type ColumnError =
  | UnitError
  | {
      readonly type: 'columnTooLong'
      readonly field: string
      readonly length: number
      readonly expected: number
    }
  | { readonly type: 'notAColumn'; readonly field: string }
  | { readonly type: 'noColumns'; readonly accepted: readonly VariableName[] }

/** The hourly part of an answer. */
export type Labelled = {
  readonly columns: Readonly<Record<string, unknown>>
  readonly units: Readonly<Record<string, unknown>>
  readonly time: readonly unknown[]
}

type Columns = {
  /** Values at the labels of the grid, our units, row `member * labels + label`. */
  readonly byName: ReadonlyMap<VariableName, Float64Array>
  readonly members: number
  readonly columns: readonly VariableName[]
  readonly gaps: readonly Gap[]
  readonly assumedUnits: readonly string[]
}

type Found = { readonly name: VariableName; readonly column: string; readonly values: readonly unknown[] }

/** Columns of one variable: the plain one (the control run of an ensemble), then members in the order of their numbers and models. */
const columnNames = (name: VariableName, present: readonly string[]): string[] => {
  const member = new RegExp(`^${name}_member\\d+(_\\w+)?$`, 'u')
  const members = present.filter((column) => member.test(column)).sort()
  return present.includes(name) ? [name, ...members] : members
}

const find = (hourly: Labelled): Result<Map<VariableName, Found[]>, ColumnError> => {
  const present = Object.keys(hourly.columns)
  const found = new Map<VariableName, Found[]>()
  for (const name of VARIABLE_NAMES) {
    const list: Found[] = []
    for (const column of columnNames(name, present)) {
      const values = hourly.columns[column]
      if (!Array.isArray(values)) return fail({ type: 'notAColumn', field: `hourly.${column}` })
      if (values.length > hourly.time.length)
        return fail({
          type: 'columnTooLong',
          field: `hourly.${column}`,
          length: values.length,
          expected: hourly.time.length,
        })
      list.push({ name, column, values })
    }
    if (list.length > 0) found.set(name, list)
  }
  return found.size === 0 ? fail({ type: 'noColumns', accepted: VARIABLE_NAMES }) : ok(found)
}

const faultOf = (raw: unknown, row: number, found: Found, value: number): Gap['why'] | undefined => {
  const { min, max }: Variable = VARIABLES[found.name]
  if (row < 0) return 'noRow'
  if (row >= found.values.length) return 'columnShort'
  if (raw === null) return 'null'
  if (typeof raw !== 'number' || !Number.isFinite(raw)) return 'notANumber'
  return value < min || value > max ? 'outOfRange' : undefined
}

/** Runs of labels with one fault become one gap each. */
const gapsOf = (column: string, faults: readonly (Gap['why'] | undefined)[], firstMs: number): Gap[] => {
  const gaps: Gap[] = []
  for (const [k, why] of faults.entries()) {
    if (why === undefined) continue
    const last = gaps.at(-1)
    const atMs = firstMs + k * HOUR_MS
    if (last?.why === why && last.toMs === atMs - HOUR_MS) gaps[gaps.length - 1] = { ...last, toMs: atMs }
    else gaps.push({ column, fromMs: atMs, toMs: atMs, why })
  }
  return gaps
}

/** Writes one column on the grid and says what is missing. */
const place = (found: Found, convert: (value: number) => number, grid: Grid, into: Float64Array): Gap[] => {
  const faults = Array.from({ length: grid.labels }, (_, k) => {
    const row = grid.rowOf[k] ?? -1
    const raw = found.values[row]
    const value = typeof raw === 'number' ? convert(raw) : NaN
    const fault = faultOf(raw, row, found, value)
    into[k] = fault === undefined ? value : NaN
    return fault
  })
  return gapsOf(
    found.column,
    faults.map((why) => (why === 'noRow' ? undefined : why)),
    grid.firstMs,
  )
}

/**
 * All columns of an answer on the hourly grid. Variables without members (often radiation) serve every member; in a variable with fewer members
 * than the others the missing ones stay NaN.
 */
export const columnsOf = (hourly: Labelled, grid: Grid): Result<Columns, ColumnError> => {
  const found = find(hourly)
  if (!found.ok) return found
  const lists = [...found.value]
  const members = Math.max(...lists.map(([, list]) => list.length))
  const byName = new Map<VariableName, Float64Array>()
  const holes = Array.from(grid.rowOf, (row) => (row < 0 ? ('noRow' as const) : undefined))
  const gaps: Gap[] = gapsOf('time', holes, grid.firstMs)
  const assumedUnits: string[] = []
  for (const [name, list] of lists) {
    const all = new Float64Array(members * grid.labels).fill(NaN)
    for (const [member, one] of list.entries()) {
      const unit = hourly.units[one.column] ?? hourly.units[name]
      const convert = conversionOf(name, one.column, unit)
      if (!convert.ok) return convert
      if (unit === undefined) assumedUnits.push(one.column)
      gaps.push(
        ...place(one, convert.value, grid, all.subarray(member * grid.labels, (member + 1) * grid.labels)),
      )
    }
    if (list.length === 1)
      for (let member = 1; member < members; member++) all.copyWithin(member * grid.labels, 0, grid.labels)
    byName.set(name, all)
  }
  return ok({ byName, members, columns: lists.map(([name]) => name), gaps, assumedUnits })
}
