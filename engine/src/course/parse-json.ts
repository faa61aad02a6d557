import { fail, ok, type Result } from '../result.ts'
import type { CourseError } from './course-error.ts'

/** Longest accepted file, MB of 10^6 characters: a whole club is under 1. */
export const MAX_FILE_MB = 20

/** Brackets within brackets; a course needs 9. */
const MAX_DEPTH = 64

/** Commas outside texts, so about as many values; a course with fine outlines has some ten thousand. */
const MAX_VALUES = 1_000_000

const CHARACTERS_PER_MB = 1_000_000

const QUOTE = 34
const COMMA = 44
const BACKSLASH = 92
const OPENING_BRACKET = 91
const CLOSING_BRACKET = 93
const OPENING_BRACE = 123
const CLOSING_BRACE = 125

/**
 * What is too much before anything is parsed: brackets too deep, values too many. Millions of either keep a JSON parser busy for
 * ten seconds or fill a phone's memory; this looks through ten megabytes in a tenth of a second.
 */
const tooMuch = (text: string): CourseError | undefined => {
  let depth = 0
  let values = 0
  let isText = false
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i)
    if (isText) {
      if (code === BACKSLASH) i++
      else if (code === QUOTE) isText = false
    } else if (code === QUOTE) isText = true
    else if (code === COMMA) values++
    else if (code === OPENING_BRACKET || code === OPENING_BRACE) {
      depth++
      if (depth > MAX_DEPTH) return { type: 'tooDeep', maxDepth: MAX_DEPTH, position: i }
    } else if (code === CLOSING_BRACKET || code === CLOSING_BRACE) depth--
  }
  if (values <= MAX_VALUES) return undefined
  const where = { feature: null, name: null, path: '' }
  return { type: 'tooMany', where, what: 'values', max: MAX_VALUES, received: values }
}

/** Parses the text of a file, of which nothing is known yet. Errors: too large, too deep, too many values, not JSON (with the place where the engine tells it). */
export const parsedJson = (text: string): Result<unknown, CourseError> => {
  if (text.length > MAX_FILE_MB * CHARACTERS_PER_MB)
    return fail({ type: 'tooLarge', sizeMB: Math.ceil(text.length / CHARACTERS_PER_MB), maxMB: MAX_FILE_MB })
  const refused = tooMuch(text)
  if (refused !== undefined) return fail(refused)
  try {
    return ok(JSON.parse(text.replace(/^\uFEFF/u, '')))
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error
    const position = /position (\d+)/u.exec(error.message)?.[1]
    return fail({ type: 'notJson', position: position === undefined ? null : Number(position) })
  }
}
