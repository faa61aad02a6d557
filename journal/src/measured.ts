import * as v from 'valibot'

/** A measured figure within a range that a real one never leaves. What is refused is told the whole range with its unit. */
export const measured = (meaning: string, unit: string, min: number, max: number) => {
  const accepted = `a number from ${min} to ${max} ${unit}`
  return v.pipe(
    v.number(accepted),
    v.minValue(min, accepted),
    v.maxValue(max, accepted),
    v.description(`${meaning}, ${unit}`),
  )
}

/** Something that is counted. Without a largest number there is none. */
export const counted = (meaning: string, min: number, max: number = Number.MAX_SAFE_INTEGER) => {
  const upTo = max === Number.MAX_SAFE_INTEGER ? ' up' : ` to ${max}`
  const accepted = `a whole number from ${min}${upTo}`
  return v.pipe(
    v.number(accepted),
    v.integer(accepted),
    v.minValue(min, accepted),
    v.maxValue(max, accepted),
    v.description(meaning),
  )
}
