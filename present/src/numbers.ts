/** The language of all words in this package; numbers follow it. */
export const LOCALE = 'en-GB'

const formats = new Map<string, Intl.NumberFormat>()

/** Formatters are slow to make, so they are kept; what they answer never changes. */
const formatOf = (key: string, options: Intl.NumberFormatOptions): Intl.NumberFormat => {
  const known = formats.get(key)
  if (known !== undefined) return known
  const made = new Intl.NumberFormat(LOCALE, options)
  formats.set(key, made)
  return made
}

/** A number with at most so many decimals, thousands set apart: '1,240', '0.51'. A rounded nothing never reads '-0'. */
export const decimal = (value: number, decimals: number): string =>
  formatOf(`most${decimals}`, { maximumFractionDigits: decimals, signDisplay: 'negative' }).format(value)

/** A number with exactly so many decimals, for columns: '1.50'. */
export const fixedDecimal = (value: number, decimals: number): string =>
  formatOf(`just${decimals}`, {
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
    signDisplay: 'negative',
  }).format(value)

/** A share as percent: 0.0518 with 1 decimal is '5.2 %'. */
export const shareWords = (share: number, decimals = 1): string => `${decimal(share * 100, decimals)} %`

/** A chance in words that people use at a table: '6 years of 10', 'no year of 10', 'all 10 years'. */
export const yearsOf = (count: number, years: number): string => {
  if (count === 0) return `no year of ${years}`
  return count === years && years > 1
    ? `all ${years} years`
    : `${count} ${count === 1 ? 'year' : 'years'} of ${years}`
}

const plurals = new Intl.PluralRules(LOCALE)
const ordinals = new Intl.PluralRules(LOCALE, { type: 'ordinal' })

/** A counted noun: '1 green', '19 greens', '1,240 holes'. */
export const counted = (count: number, one: string, many: string): string =>
  `${decimal(count, 0)} ${plurals.select(count) === 'one' ? one : many}`

const ORDINAL_ENDINGS: Readonly<Record<string, string>> = { one: 'st', two: 'nd', few: 'rd' }

/** '1st', '2nd', '11th'. */
export const ordinal = (count: number): string => `${count}${ORDINAL_ENDINGS[ordinals.select(count)] ?? 'th'}`

/** Names in a row: 'one', 'one and two', 'one, two and three'. */
export const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`
