import { fail, ok, type Result } from '../result.ts'

/** How the API's value of an hour relates to its label: at that moment, or over the hour before it. */
export type Window = 'instant' | 'precedingHour'

/** One variable of the open hourly API that is read. */
export type Variable = {
  readonly window: Window
  /** Unit that the API documents when the answer names none. */
  readonly defaultUnit: string
  /** From the value as sent to our unit, by the unit sent. */
  readonly units: Readonly<Record<string, (value: number) => number>>
  /** Values outside are taken for faults of the source, in our unit. */
  readonly min: number
  readonly max: number
}

const same = (value: number): number => value
const fahrenheit = (value: number): number => ((value - 32) * 5) / 9

const TEMPERATURE = { '°C': same, C: same, '°F': fahrenheit, F: fahrenheit }
/** Exact: 1 km/h = 1/3.6 m/s, 1 mph = 0.44704 m/s, 1 kn = 1852/3600 m/s. */
const SPEED = {
  'km/h': (value: number) => value / 3.6,
  'm/s': same,
  mph: (value: number) => value * 0.44704,
  'mp/h': (value: number) => value * 0.44704,
  kn: (value: number) => (value * 1852) / 3600,
}
const DEPTH = { mm: same, inch: (value: number) => value * 25.4, in: (value: number) => value * 25.4 }

const temperature: Variable = { window: 'instant', defaultUnit: '°C', units: TEMPERATURE, min: -90, max: 65 }
const rain: Variable = { window: 'precedingHour', defaultUnit: 'mm', units: DEPTH, min: 0, max: 400 }

/** The variables read, by the API's own names. Windows and default units as its documentation gives them. */
export const VARIABLES = {
  precipitation: rain,
  rain,
  showers: rain,
  temperature_2m: temperature,
  dew_point_2m: temperature,
  relative_humidity_2m: { window: 'instant', defaultUnit: '%', units: { '%': same }, min: 0, max: 100 },
  wind_speed_10m: { window: 'instant', defaultUnit: 'km/h', units: SPEED, min: 0, max: 120 },
  wind_gusts_10m: { window: 'precedingHour', defaultUnit: 'km/h', units: SPEED, min: 0, max: 150 },
  shortwave_radiation: {
    window: 'precedingHour',
    defaultUnit: 'W/m²',
    units: { 'W/m²': same, 'W/m2': same },
    min: 0,
    max: 1600,
  },
} as const satisfies Record<string, Variable>

/** A variable of the API. */
export type VariableName = keyof typeof VARIABLES

/** Names of all variables read. */
export const VARIABLE_NAMES = Object.keys(VARIABLES) as readonly VariableName[]

/** A unit that the variable cannot have. */
export type UnitError = {
  readonly type: 'unknownUnit'
  readonly field: string
  readonly received: string
  readonly accepted: readonly string[]
}

/** The conversion for a column, from the unit the answer names (or the documented one). */
export const conversionOf = (
  name: VariableName,
  column: string,
  unit: unknown,
): Result<(value: number) => number, UnitError> => {
  const variable: Variable = VARIABLES[name]
  const named = unit === undefined ? variable.defaultUnit : unit
  const convert =
    typeof named === 'string' && Object.hasOwn(variable.units, named) ? variable.units[named] : undefined
  return convert === undefined
    ? fail({
        type: 'unknownUnit',
        field: `hourly_units.${column}`,
        received: JSON.stringify(named) ?? 'nothing',
        accepted: Object.keys(variable.units),
      })
    : ok(convert)
}
