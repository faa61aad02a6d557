import { fail, ok, type Result } from '../result.ts'
import type { CourseError } from './course-error.ts'

/** Longest accepted file, MB of 10^6 characters: a whole club is under 1. */
export const MAX_FILE_MB = 20

/** Brackets within brackets; a course needs 9. */
const MAX_DEPTH = 64

const CHARACTERS_PER_MB = 1_000_000

const QUOTE = 34
const BACKSLASH = 92
const OPENING: ReadonlySet<number> = new Set(['{', '['].map((c) => c.charCodeAt(0)))
const CLOSING: ReadonlySet<number> = new Set(['}', ']'].map((c) => c.charCodeAt(0)))

/**
 * Where brackets nest deeper than allowed; -1 when they do not. Millions of open brackets keep a JSON parser busy for ten seconds,
 * this for a tenth of one.
 */
const tooDeepAt = (text: string): number => {
  let depth = 0
  let isText = false
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i)
    if (isText) {
      if (code === BACKSLASH) i++
      else if (code === QUOTE) isText = false
    } else if (code === QUOTE) isText = true
    else if (OPENING.has(code)) {
      depth++
      if (depth > MAX_DEPTH) return i
    } else if (CLOSING.has(code)) depth--
  }
  return -1
}

/** Parses the text of a file, of which nothing is known yet. Errors: too large, too deep, not JSON (with the place where the engine tells it). */
export const parsedJson = (text: string): Result<unknown, CourseError> => {
  if (text.length > MAX_FILE_MB * CHARACTERS_PER_MB)
    return fail({ type: 'tooLarge', sizeMB: Math.ceil(text.length / CHARACTERS_PER_MB), maxMB: MAX_FILE_MB })
  const deepAt = tooDeepAt(text)
  if (deepAt >= 0) return fail({ type: 'tooDeep', maxDepth: MAX_DEPTH, position: deepAt })
  try {
    return ok(JSON.parse(text.replace(/^\uFEFF/u, '')))
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error
    const position = /position (\d+)/u.exec(error.message)?.[1]
    return fail({ type: 'notJson', position: position === undefined ? null : Number(position) })
  }
}
