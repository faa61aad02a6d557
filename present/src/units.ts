import { METRIC_UNITS, type UnitsWanted } from '@swardwright/engine'
import { decimal } from './numbers.ts'

/** Quantities that a club may read in either system, and the unit they are stored in. */
export type QuantityKind = keyof UnitsWanted

type Unit = {
  /** As it stands behind the figure. */
  readonly mark: string
  readonly fromStored: (value: number) => number
  readonly toStored: (value: number) => number
  /** Decimals shown at most. */
  readonly decimals: number
}

/** A unit that is a plain multiple of the stored one. */
const multiple = (mark: string, stored: number, decimals: number): Unit => ({
  mark,
  fromStored: (value) => value / stored,
  toStored: (value) => value * stored,
  decimals,
})

/** Millimetres in an inch; exact (international yard and pound agreement, 1959). */
export const MM_PER_INCH = 25.4
/** Metres in a yard; exact (1959). */
export const M_PER_YARD = 0.9144
/** Square metres in a square foot; exact, 0.3048 squared. */
export const M2_PER_FT2 = 0.09290304
/** Tonnes in a short ton of 2,000 lb; exact, 2000 x 0.45359237 kg. Never the long ton. */
export const T_PER_SHORT_TON = 0.90718474

const celsius: Unit = multiple('\u00b0C', 1, 1)
const fahrenheit: Unit = {
  mark: '\u00b0F',
  fromStored: (value) => value * 1.8 + 32,
  toStored: (value) => (value - 32) / 1.8,
  decimals: 0,
}

/** The units of each quantity by the id that a course file uses. Stored: mm, t, m2, m, degrees C. */
const UNITS = {
  tine: { mm: multiple('mm', 1, 1), in: multiple('in', MM_PER_INCH, 2) },
  depth: { mm: multiple('mm', 1, 0), in: multiple('in', MM_PER_INCH, 2) },
  sand: { t: multiple('t', 1, 1), shortTon: multiple('short tons', T_PER_SHORT_TON, 1) },
  area: { m2: multiple('m\u00b2', 1, 0), ft2: multiple('ft\u00b2', M2_PER_FT2, 0) },
  distance: { m: multiple('m', 1, 0), yd: multiple('yd', M_PER_YARD, 0) },
  temperature: { C: celsius, F: fahrenheit },
  rain: { mm: multiple('mm', 1, 1), in: multiple('in', MM_PER_INCH, 2) },
} as const satisfies { readonly [K in QuantityKind]: Readonly<Record<UnitsWanted[K], Unit>> }

/** The units of a club that has not chosen: metric throughout. */
export const METRIC: UnitsWanted = METRIC_UNITS

/** The units of a club that reads the other system throughout. */
export const IMPERIAL: UnitsWanted = {
  tine: 'in',
  depth: 'in',
  sand: 'shortTon',
  area: 'ft2',
  distance: 'yd',
  temperature: 'F',
  rain: 'in',
}

const unitsOf = (kind: QuantityKind): Readonly<Record<string, Unit>> => UNITS[kind]

const wanted = (kind: QuantityKind, units: UnitsWanted): Unit => {
  const unit = unitsOf(kind)[units[kind]]
  if (unit === undefined) throw new RangeError(`${kind} has no unit ${units[kind]}`)
  return unit
}

const other = (kind: QuantityKind, units: UnitsWanted): Unit =>
  wanted(kind, units[kind] === METRIC[kind] ? IMPERIAL : METRIC)

/** The mark of the unit that the club reads: 'mm', 'in', 'short tons'. */
export const unitMark = (kind: QuantityKind, units: UnitsWanted): string => wanted(kind, units).mark

/** A stored value in the club's unit, unrounded: for rulers and fields. */
export const inWantedUnit = (kind: QuantityKind, stored: number, units: UnitsWanted): number =>
  wanted(kind, units).fromStored(stored)

/** What a person typed in the club's unit, as it is stored. */
export const fromWantedUnit = (kind: QuantityKind, typed: number, units: UnitsWanted): number =>
  wanted(kind, units).toStored(typed)

/** Decimals that a field of this quantity shows in the club's unit. */
export const wantedDecimals = (kind: QuantityKind, units: UnitsWanted): number => wanted(kind, units).decimals

const figureIn = (unit: Unit, stored: number): string => decimal(unit.fromStored(stored), unit.decimals)

const withMark = (figure: string, unit: Unit): string =>
  `${figure} ${unit.mark === 'short tons' && figure === '1' ? 'short ton' : unit.mark}`

/** The figure alone, in the club's unit: '13', '0.51'. */
export const figureOf = (kind: QuantityKind, stored: number, units: UnitsWanted): string =>
  figureIn(wanted(kind, units), stored)

/** A stored value in the club's unit: '13 mm', '2.3 t'. */
export const quantityWords = (kind: QuantityKind, stored: number, units: UnitsWanted): string => {
  const unit = wanted(kind, units)
  return withMark(figureIn(unit, stored), unit)
}

/** The club's unit first, the other system behind: '13 mm (0.51 in)'. */
export const bothUnits = (kind: QuantityKind, stored: number, units: UnitsWanted): string => {
  const second = other(kind, units)
  return `${quantityWords(kind, stored, units)} (${withMark(figureIn(second, stored), second)})`
}

/** A band of one quantity: low, likely, high. */
export type Band = { readonly low: number; readonly likely: number; readonly high: number }

/** A band in words: '40 to 61 t, likely 52 t'. From 10 up whole numbers are enough; one figure where all three read alike. */
export const bandWords = (kind: QuantityKind, band: Band, units: UnitsWanted): string => {
  const unit = wanted(kind, units)
  const decimals = Math.abs(unit.fromStored(band.high)) >= 10 ? 0 : unit.decimals
  const [low, likely, high] = [band.low, band.likely, band.high].map((value) =>
    decimal(unit.fromStored(value), decimals),
  )
  if (low === high) return withMark(likely ?? '', unit)
  return `${low} to ${high} ${unit.mark}, likely ${withMark(likely ?? '', unit)}`
}
