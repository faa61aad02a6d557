import * as v from 'valibot'
import type { CalculationError } from '../catalogue/errors.ts'
import { quantity } from '../catalogue/quantity.ts'
import type { Result } from '../result.ts'
import { checked } from './checked.ts'
import { altitudeM, latitudeDeg } from './evapotranspiration-fields.ts'

const text = v.pipe(v.string(), v.minLength(1))

/** How one column of ours is found and turned into our unit: `cell * factor + offset`. */
export const columnMap = v.strictObject({
  column: text,
  factor: v.optional(
    quantity({ meaning: 'What the figure is multiplied by', unit: '1', min: -1e6, max: 1e6 }),
    1,
  ),
  offset: v.optional(quantity({ meaning: 'What is added after that', unit: '1', min: -1e6, max: 1e6 }), 0),
  missing: v.optional(v.array(v.union([v.string(), v.number()])), []),
  trace: v.optional(
    v.strictObject({
      value: v.union([v.string(), v.number()]),
      as: quantity({ meaning: 'What a trace counts as, in our unit', unit: '1', min: 0, max: 1 }),
    }),
  ),
})

/** Ways to write a day. `dd-mon-yyyy` has English month names. */
export const DATE_FORMATS = ['yyyy-mm-dd', 'yyyymmdd', 'dd/mm/yyyy', 'dd-mon-yyyy'] as const

/** Says where in a file of daily weather each column is, and where the station stands. */
export const historyMap = v.strictObject({
  date: v.union([text, v.strictObject({ column: text })]),
  rainMm: columnMap,
  minC: columnMap,
  maxC: columnMap,
  meanC: v.optional(columnMap),
  windMPerS: v.optional(columnMap),
  humidityPercent: v.optional(columnMap),
  radiationMJPerM2: v.optional(columnMap),
  sunshineHours: v.optional(columnMap),
  dateFormat: v.optional(v.picklist(DATE_FORMATS), 'yyyy-mm-dd'),
  delimiter: v.optional(v.picklist([',', ';', '\t', '|']), ','),
  skipLines: v.optional(v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(1000)), 0),
  latitudeDeg,
  longitudeDeg: quantity({ meaning: 'Longitude, east positive', unit: 'deg', min: -180, max: 180 }),
  altitudeM,
  windHeightM: v.optional(
    quantity({ meaning: 'Height of the wind gauge', unit: 'm', min: 0.5, max: 100 }),
    10,
  ),
})

/** Where one column is. */
export type ColumnMap = v.InferOutput<typeof columnMap>

/** A whole map. */
export type HistoryMap = v.InferOutput<typeof historyMap>

/** What the reader needs: the map, where the station may be unknown. */
export type Layout = Omit<HistoryMap, 'latitudeDeg' | 'longitudeDeg' | 'altitudeM'> & {
  readonly latitudeDeg?: number
  readonly longitudeDeg?: number
  readonly altitudeM?: number
}

/** Reads a map as a person wrote it. */
export const readHistoryMap = (json: unknown): Result<HistoryMap, CalculationError> =>
  checked(historyMap, json)

const column = (name: string, factor = 1): ColumnMap => ({ column: name, factor, offset: 0, missing: [] })

/** Knots as m/s: 1852 m in an hour. */
const KNOT = 1852 / 3600

/** Number after a word in the lines above the header, such as 'Station Height: 71 M'. */
const numberAfter = (lines: readonly string[], word: RegExp): number | undefined => {
  for (const line of lines) {
    const match = word.exec(line)
    if (match !== null) return Number(match[1])
  }
  return undefined
}

/**
 * The daily layout of the Irish weather service: optional lines about the station, then a header with `date`, `rain`, `maxtp`, `mintp` and, where there
 * are, `wdsp` (knots at 10 m), `sun` (hours), `g_rad` or `glorad` (J/cm2). Undefined when the file has no such header.
 */
export const serviceLayout = (fileText: string): Layout | undefined => {
  const lines = fileText.split(/\r\n|\n|\r/u, 100)
  const header = lines.findIndex(
    (line) => /(^|,)\s*rain\s*,/u.test(line) && line.includes('maxtp') && line.includes('mintp'),
  )
  if (header < 0) return undefined
  const names = (lines[header] ?? '').split(',').map((name) => name.trim())
  const optional = (ours: string, theirs: string, factor = 1) =>
    names.includes(theirs) ? { [ours]: column(theirs, factor) } : {}
  const above = lines.slice(0, header)
  const [latitude, longitude, altitude] = [
    numberAfter(above, /latitude\s*:?\s*(-?[\d.]+)/iu),
    numberAfter(above, /longitude\s*:?\s*(-?[\d.]+)/iu),
    numberAfter(above, /height\s*:?\s*(-?[\d.]+)/iu),
  ]
  return {
    date: { column: names[0] ?? 'date' },
    rainMm: column('rain'),
    minC: column('mintp'),
    maxC: column('maxtp'),
    ...optional('windMPerS', 'wdsp', KNOT),
    ...optional('sunshineHours', 'sun'),
    ...optional('radiationMJPerM2', 'g_rad', 0.01),
    ...optional('radiationMJPerM2', 'glorad', 0.01),
    dateFormat: /^\d{1,2}-[a-z]{3}-/iu.test(lines[header + 1] ?? '') ? 'dd-mon-yyyy' : 'yyyy-mm-dd',
    delimiter: ',',
    skipLines: header,
    windHeightM: 10,
    ...(latitude === undefined ? {} : { latitudeDeg: latitude }),
    ...(longitude === undefined ? {} : { longitudeDeg: longitude }),
    ...(altitude === undefined ? {} : { altitudeM: altitude }),
  }
}
