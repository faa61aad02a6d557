import { fail, ok, type Result } from '../result.ts'
import type { CourseReading } from './assemble-course.ts'
import { assumedFact } from './assumed.ts'
import { GREEN_AREA_M2 } from './course.ts'
import type { CourseError, CourseWhere } from './course-error.ts'
import { MAX_FILE_MB } from './parse-json.ts'
import { MAX_ROUGH_GREENS, roughCourse, type RoughClub, type RoughGreen } from './rough-course.ts'
import { described } from './schema-error.ts'

/** One row: its line in the file and its cells. */
type Row = { readonly line: number; readonly cells: readonly string[] }

/** Square metres in a square foot: 0.3048 m squared, exact. */
const M2_PER_FT2 = 0.3048 * 0.3048

const SEPARATORS = ['\t', ';', ','] as const

/** Tab before semicolon before comma: a file with semicolons may hold decimal commas. */
const separatorOf = (text: string): string => SEPARATORS.find((mark) => text.includes(mark)) ?? ','

/** A line's cells; a cell in double quotes may hold the separator, and a quote written twice (RFC 4180, section 2). */
const cellsOf = (line: string, separator: string): readonly string[] => {
  const cells: string[] = []
  let cell = ''
  let isQuoted = false
  for (let i = 0; i < line.length; i++) {
    const mark = line.charAt(i)
    if (isQuoted && mark === '"' && line.charAt(i + 1) === '"') {
      cell += '"'
      i++
    } else if (mark === '"') isQuoted = !isQuoted
    else if (mark === separator && !isQuoted) {
      cells.push(cell.trim())
      cell = ''
    } else cell += mark
  }
  return [...cells, cell.trim()]
}

const rowsOf = (text: string): readonly Row[] => {
  const separator = separatorOf(text)
  return text
    .replace(/^\uFEFF/u, '')
    .split(/\r\n|\r|\n/u)
    .map((line, index) => ({ line: index + 1, text: line }))
    .filter((row) => row.text.trim() !== '')
    .map((row) => ({ line: row.line, cells: cellsOf(row.text, separator) }))
}

const NUMBER = /^(\d+(?:[.,]\d+)?)\s*(?:m2|m²|sqm|sq m)?$/iu

/** A figure with point or comma, and perhaps its unit behind; null when it is none. */
const figureOf = (cell: string | undefined): number | null => {
  const digits = NUMBER.exec(cell ?? '')?.[1]
  return digits === undefined ? null : Number(digits.replace(',', '.'))
}

type Columns = { readonly name: number; readonly area: number; readonly m2PerUnit: number }

const NO_HEADER: Columns = { name: 0, area: 1, m2PerUnit: 1 }

/** The columns that a heading names; null when the first row is a green already. */
const headingOf = (row: Row): Columns | null => {
  if (row.cells.some((cell) => figureOf(cell) !== null)) return null
  const area = row.cells.findIndex((cell) => /area|m2|m²|ft2|ft²|size/iu.test(cell))
  const name = row.cells.findIndex((cell, i) => i !== area && /name|green|hole/iu.test(cell))
  if (area < 0) return null
  const isFeet = /ft2|ft²|sq\.? ?ft|feet/iu.test(row.cells[area] ?? '')
  return { name: name < 0 ? 0 : name, area, m2PerUnit: isFeet ? M2_PER_FT2 : 1 }
}

/** The hole that a name tells by a number of its own: '7', 'Hole 7', '7th'. */
const holeOf = (name: string): number | null => {
  const number = Number(/(?:^|[^\d])(\d{1,2})(?:$|[^\d])/u.exec(name)?.[1] ?? NaN)
  return number >= 1 && number <= 36 ? number : null
}

const greenOf = (row: Row, columns: Columns): Result<RoughGreen, CourseError> => {
  const name = row.cells[columns.name] ?? ''
  const where: CourseWhere = { feature: null, name: name === '' ? null : name, path: `line ${row.line}` }
  if (name === '') return fail({ type: 'missing', where, field: 'name', expected: 'the name of a green' })
  const cell = row.cells[columns.area]
  const figure = figureOf(cell)
  const isSplit = columns === NO_HEADER && row.cells.length > 2
  if (figure === null || isSplit)
    return fail({
      type: 'wrongType',
      where,
      field: 'area',
      expected: isSplit
        ? 'a name and one area (with a decimal comma, put a semicolon between them)'
        : 'an area in m2 such as 452.5',
      received: described(isSplit ? row.cells.slice(1).join(',') : cell),
    })
  const areaM2 = figure * columns.m2PerUnit
  const { min, max } = GREEN_AREA_M2
  if (areaM2 < min || areaM2 > max)
    return fail({ type: 'outOfRange', where, field: 'area', unit: 'm2', min, max, received: areaM2 })
  return ok({ name: /^\d+$/u.test(name) ? `Green ${name}` : name, hole: holeOf(name), areaM2 })
}

/** Holes as the names tell them; where no name does, the first eighteen rows are holes 1 to 18. Two of one hole tell nothing. */
const numbered = (greens: readonly RoughGreen[]): readonly RoughGreen[] => {
  if (greens.some(({ hole }) => hole !== null)) {
    const seen = new Set<number>()
    return greens.map((green) => {
      if (green.hole === null || seen.has(green.hole)) return { ...green, hole: null }
      seen.add(green.hole)
      return green
    })
  }
  return greens.map((green, n) => ({ ...green, hole: n < 18 ? n + 1 : null }))
}

/**
 * A rough course from a plain list: one green a line, its name and its area in m2, with comma, semicolon or tab between; a heading is
 * optional (with `ft2` in it, areas are square feet). Decimal commas are read where the separator is none.
 */
export const courseFromCsv = (text: string, club: RoughClub = {}): Result<CourseReading, CourseError> => {
  const sizeMB = Math.ceil(text.length / 1_000_000)
  if (sizeMB > MAX_FILE_MB) return fail({ type: 'tooLarge', sizeMB, maxMB: MAX_FILE_MB })
  const rows = rowsOf(text)
  const [first] = rows
  if (first === undefined) return fail({ type: 'noGreens' })
  const heading = headingOf(first)
  const greens: RoughGreen[] = []
  for (const row of heading === null ? rows : rows.slice(1)) {
    const green = greenOf(row, heading ?? NO_HEADER)
    if (!green.ok) return green
    greens.push(green.value)
    if (greens.length > MAX_ROUGH_GREENS) break
  }
  const isHoleTold = greens.some(({ hole }) => hole !== null)
  return roughCourse(numbered(greens), club, isHoleTold ? [] : [assumedFact('green.hole', 'all')])
}
