import type * as v from 'valibot'
import type { CourseError } from '../course/course-error.ts'
import { parsedJson } from '../course/parse-json.ts'
import { readBySchema } from '../course/schema-error.ts'
import type { Result } from '../result.ts'
import { planToCheck, type PlanToCheck } from './plan.ts'
import { prescription, type Prescription } from './prescription.ts'

const read = <S extends v.GenericSchema>(schema: S, text: string): Result<v.InferOutput<S>, CourseError> => {
  const value = parsedJson(text)
  return value.ok ? readBySchema(schema, value.value, { feature: null, name: null, path: '' }) : value
}

/** Reads a prescription file. Errors: the first thing wrong, with its place in the file. */
export const readPrescription = (text: string): Result<Prescription, CourseError> => read(prescription, text)

/** Reads a plan file to be judged, made here or written by hand. Errors: the first thing wrong, with its place in the file. */
export const readPlan = (text: string): Result<PlanToCheck, CourseError> => read(planToCheck, text)
