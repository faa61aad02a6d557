import { fail, ok, type Result } from '../result.ts'

/** One green of a table of areas. */
export type AreaRow = {
  readonly name: string
  readonly areaM2: number
  readonly spansM?: readonly [number, number]
}

/** A line that could not be read. Lines count from 1, as spreadsheets do. */
export type AreaLineError = {
  readonly line: number
  readonly field: 'name' | 'area' | 'span'
  readonly received: string
  readonly expected: string
}

/** What a table held. */
export type AreaTable = { readonly rows: readonly AreaRow[]; readonly errors: readonly AreaLineError[] }

/** Why a table cannot be read at all. */
export type AreaTableError = {
  readonly type: 'noHeader' | 'noAreaColumn' | 'noNameColumn'
  readonly header: string
}

const MIN_AREA_M2 = 1
const MAX_AREA_M2 = 20_000

/** Exact: 1 ft = 0.3048 m, 1 yd = 0.9144 m (international yard and pound agreement 1959). */
const M_PER_FOOT = 0.3048
const M_PER_YARD = 0.9144

const AREA_UNITS: readonly (readonly [RegExp, number])[] = [
  [/\b(?:ha|hectares?)\b/u, 10_000],
  [/\b(?:ft2|ft²|sq\.? ?ft|sqft|square feet)/u, M_PER_FOOT ** 2],
  [/\b(?:yd2|yd²|sq\.? ?yds?|square yards)/u, M_PER_YARD ** 2],
  [/(?:\bm2\b|m²|\bsq\.? ?m\b|\bsqm\b|square met|aream2)/u, 1],
]

/** Square metres for one of the column's unit, square metres where it names none. */
const areaFactor = (header: string): number => AREA_UNITS.find(([pattern]) => pattern.test(header))?.[1] ?? 1

/** Splits one line at the separator, honouring double quotes. */
const cells = (line: string, separator: string): string[] => {
  const found: string[] = []
  let cell = ''
  let quoted = false
  for (let k = 0; k < line.length; k++) {
    const sign = line[k] ?? ''
    if (quoted && sign === '"' && line[k + 1] === '"') {
      cell += '"'
      k += 1
    } else if (sign === '"') quoted = !quoted
    else if (sign === separator && !quoted) {
      found.push(cell.trim())
      cell = ''
    } else cell += sign
  }
  return [...found, cell.trim()]
}

/** A number with point or comma before the decimals; a sign that parts thousands goes. Not a number when unclear. */
const numberFrom = (text: string, separator: string): number => {
  const bare = text.replaceAll(/[\s\u00A0'’]/gu, '')
  if (separator === ';' && /^\d+(?:\.\d{3})*,\d+$/u.test(bare))
    return Number(bare.replaceAll('.', '').replace(',', '.'))
  if (/^\d{1,3}(?:,\d{3})+(?:\.\d+)?$/u.test(bare)) return Number(bare.replaceAll(',', ''))
  return bare === '' ? Number.NaN : Number(bare.replace(',', '.'))
}

type Columns = {
  readonly name: number
  readonly area: number
  readonly factor: number
  readonly spans: readonly number[]
}

const columnsOf = (header: readonly string[]): Columns | 'noAreaColumn' | 'noNameColumn' => {
  const low = header.map((cell) => cell.toLowerCase())
  const area = low.findIndex((cell) => /area|\bm2\b|m²|\bha\b|sq/u.test(cell))
  const name = low.findIndex((cell, k) => k !== area && /name|green|hole|^no\.?$|^#$|number/u.test(cell))
  if (area < 0) return 'noAreaColumn'
  if (name < 0) return 'noNameColumn'
  const spans = low.flatMap((cell, k) => (k !== area && /length|width|span|depth/u.test(cell) ? [k] : []))
  return { name, area, factor: areaFactor(low[area] ?? ''), spans: spans.length === 2 ? spans : [] }
}

const readLine = (
  row: readonly string[],
  line: number,
  columns: Columns,
  separator: string,
): AreaRow | AreaLineError => {
  const name = row[columns.name] ?? ''
  if (name === '') return { line, field: 'name', received: '', expected: 'a name or number for the green' }
  const received = row[columns.area] ?? ''
  const areaM2 = numberFrom(received, separator) * columns.factor
  if (!(areaM2 >= MIN_AREA_M2 && areaM2 <= MAX_AREA_M2))
    return { line, field: 'area', received, expected: `${MIN_AREA_M2} to ${MAX_AREA_M2} m2` }
  const [p = Number.NaN, q = Number.NaN] = columns.spans.map((k) => numberFrom(row[k] ?? '', separator))
  if (columns.spans.every((k) => (row[k] ?? '') === '')) return { name, areaM2 }
  if (!(p > 0 && q > 0))
    return {
      line,
      field: 'span',
      received: columns.spans.map((k) => row[k]).join(' '),
      expected: 'two spans above 0 m',
    }
  return { name, areaM2, spansM: [p, q] }
}

/**
 * Reads a table of greens and areas (CSV with a header line; comma, semicolon or tab). The name column is called name, green, hole or no; the
 * area column has 'area' or its unit in its head (m2, ha, sq ft, sq yd; m2 when none is told); two columns of spans (length, width) in metres
 * may follow. Lines that cannot be read are told one by one, the others are kept.
 */
export const readAreaTable = (source: string): Result<AreaTable, AreaTableError> => {
  const lines = source.replace(/^\uFEFF/u, '').split(/\r\n|\n|\r/u)
  const at = lines.findIndex((line) => line.trim() !== '')
  const header = lines[at] ?? ''
  if (header === '') return fail({ type: 'noHeader', header })
  const separator = ['\t', ';', ','].find((sign) => header.includes(sign)) ?? ','
  const columns = columnsOf(cells(header, separator))
  if (typeof columns === 'string') return fail({ type: columns, header })
  const read = lines.flatMap((line, k) =>
    k <= at || line.trim() === '' ? [] : [readLine(cells(line, separator), k + 1, columns, separator)],
  )
  return ok({ rows: read.filter((row) => 'areaM2' in row), errors: read.filter((row) => 'field' in row) })
}
