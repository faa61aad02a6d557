import type { CourseError } from '../../course/course-error.ts'
import { parsedJson } from '../../course/parse-json.ts'
import { readBySchema } from '../../course/schema-error.ts'
import type { Result } from '../../result.ts'
import { factsFile, type FactsFile } from './facts.ts'

/** Reads a file of facts. Errors: the first thing wrong, with its place in the file. */
export const readFacts = (text: string): Result<FactsFile, CourseError> => {
  const value = parsedJson(text)
  return value.ok ? readBySchema(factsFile, value.value, { feature: null, name: null, path: '' }) : value
}
