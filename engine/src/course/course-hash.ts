import type { Course } from './course.ts'
import { sha256Hex } from './sha256.ts'

/**
 * JSON with one spelling for one content: keys sorted, no blanks, fields without a value left out
 * (after RFC 8785; numbers as ECMAScript writes them, which is that RFC's rule).
 */
export const canonicalJson = (value: unknown): string => {
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(',')}]`
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'null'
  const fields = Object.entries(value)
    .filter(([, field]) => field !== undefined)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([key, field]) => `${JSON.stringify(key)}:${canonicalJson(field)}`)
  return `{${fields.join(',')}}`
}

/** Tells whether a plan was made for this very course: SHA-256 of its canonical JSON, 64 hexadecimal digits. Order of fields does not matter, order of greens does. */
export const courseHash = (course: Course): string => sha256Hex(canonicalJson(course))
