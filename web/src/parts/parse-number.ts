/** What a number field accepts, in the unit it shows. */
export type NumberRange = {
  readonly label: string
  readonly unit: string
  readonly min: number
  readonly max: number
  readonly whole?: boolean
}

/** A typed number, or one sentence that says what is wrong with it. */
export type ParsedNumber =
  { readonly ok: true; readonly value: number } | { readonly ok: false; readonly message: string }

const trim = (value: number): string => String(Number(value.toPrecision(6)))

const withUnit = (range: NumberRange): string => (range.unit === '' ? '' : ` ${range.unit}`)

/** Reads what a person typed: comma or point, blanks ignored. Errors name the field, the unit and the accepted range. */
export const parseNumber = (text: string, range: NumberRange): ParsedNumber => {
  const limits = `${trim(range.min)} to ${trim(range.max)}${withUnit(range)}`
  const cleaned = text.replaceAll(/\s/gu, '').replace(',', '.')
  if (cleaned === '') return { ok: false, message: `${range.label}: give a number, ${limits}` }
  const value = Number(cleaned)
  if (!Number.isFinite(value))
    return { ok: false, message: `${range.label}: ‘${text}’ is not a number; ${limits}` }
  if (range.whole === true && !Number.isInteger(value))
    return { ok: false, message: `${range.label}: a whole number, ${limits}` }
  if (value < range.min || value > range.max)
    return { ok: false, message: `${range.label}: ${limits}, not ${trim(value)}` }
  return { ok: true, value }
}
