import * as v from 'valibot'
import { planSchema, prescriptionSchema } from '@swardwright/engine'

/** Longest free text in an entry, characters. */
export const WORDS_MAX_LENGTH = 4000

/** Free text by a person. */
export const words = v.pipe(
  v.string(),
  v.trim(),
  v.minLength(1),
  v.maxLength(WORDS_MAX_LENGTH),
  v.description('In the own words of the person'),
)

/** Body of `prescriptionSettled`: the whole prescription, which replaces the one before. */
export const prescriptionSettledBody = v.strictObject({
  prescription: prescriptionSchema,
  note: v.optional(words),
})

/** Body of `planSettled`: the whole plan as `plan make` prints it, which replaces the one before. */
export const planSettledBody = v.strictObject({ plan: planSchema, note: v.optional(words) })
