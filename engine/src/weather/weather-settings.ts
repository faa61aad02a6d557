import * as v from 'valibot'
import type { CalculationError } from '../catalogue/errors.ts'
import { quantity, type Quantity } from '../catalogue/quantity.ts'
import type { Result } from '../result.ts'
import { checked } from './checked.ts'

/** A threshold the manager can change: what it means, its unit and range, its start value, and what that stands on. */
export type WeatherSetting = Quantity & { readonly default: number; readonly basis: string }

const COMMON = 'common practice, no source'

/** Every threshold of the weather rules, by name. The start values are for open, well-drained greens in a cool, moist climate. */
export const WEATHER_SETTING_LIST = {
  rainStopMmPerH: {
    meaning: 'An hour with this much rain stops work that rain spoils',
    unit: 'mm/h',
    min: 0.05,
    max: 10,
    default: 0.2,
    basis: 'common practice, no source; 0.1 mm is the least a gauge shows',
  },
  leafHoldsMm: {
    meaning: 'Most water that grass and surface hold after rain and that must dry off the leaf',
    unit: 'mm',
    min: 0.05,
    max: 2,
    default: 0.4,
    basis: COMMON,
  },
  dewHoldsMm: {
    meaning: 'Most dew on the leaf after a clear night',
    unit: 'mm',
    min: 0.05,
    max: 1,
    default: 0.3,
    basis: 'typical dew 0.1 to 0.3 mm, upper bound about 0.8 mm a night (from memory)',
  },
  dryLeafMm: {
    meaning: 'A leaf with no more water than this counts as dry',
    unit: 'mm',
    min: 0,
    max: 0.2,
    default: 0.03,
    basis: COMMON,
  },
  eveningDewLeadMin: {
    meaning: 'On the eve of a dewy night the surface turns damp this long before sunset',
    unit: 'min',
    min: 0,
    max: 240,
    default: 90,
    basis: 'common practice, no source: one to two hours before sunset in September',
  },
  dewyNightMm: {
    meaning: 'Dew reckoned between an hour before and five hours after sunset that makes it a dewy night',
    unit: 'mm',
    min: 0.005,
    max: 0.3,
    default: 0.03,
    basis: COMMON,
  },
  frostSurfaceC: {
    meaning: 'Surface temperature at or under which there is frost on the green',
    unit: 'degC',
    min: -5,
    max: 3,
    default: 0,
    basis: 'no traffic on frost (USGA, Frost Delays; NC State AG-763W)',
  },
  thawedSurfaceC: {
    meaning: 'Surface temperature above which frost has gone',
    unit: 'degC',
    min: 0,
    max: 10,
    default: 2,
    basis: 'no traffic until fully melted (USGA, Frost Delays); the figure is common practice',
  },
  surfaceColderMostC: {
    meaning: 'Most that a still clear night cools the surface under the air',
    unit: 'degC',
    min: 0,
    max: 10,
    default: 5,
    basis: COMMON,
  },
  spinnerWindStopMPerS: {
    meaning: 'Mean wind at 10 m from which a spinner stops',
    unit: 'm/s',
    min: 1,
    max: 20,
    default: 8,
    basis: 'Beaufort 5 and above; judgement from fertiliser limits of 2 to 3.4 m/s, sand being heavier',
  },
  spinnerWindCautionMPerS: {
    meaning: 'Mean wind at 10 m from which a spinner throws unevenly',
    unit: 'm/s',
    min: 1,
    max: 20,
    default: 5.5,
    basis: 'Beaufort 4 and above; judgement as for the stop',
  },
  spinnerGustStopMPerS: {
    meaning: 'Gust at 10 m from which a spinner stops',
    unit: 'm/s',
    min: 2,
    max: 40,
    default: 13,
    basis: COMMON,
  },
  heatCautionC: {
    meaning: 'Air temperature from which an opened green needs water at hand',
    unit: 'degC',
    min: 15,
    max: 45,
    default: 26,
    basis: COMMON,
  },
  heatStopC: {
    meaning: 'Air temperature from which no green is opened',
    unit: 'degC',
    min: 20,
    max: 50,
    default: 32,
    basis: COMMON,
  },
  wiltMmPerH: {
    meaning: 'Reference evapotranspiration in an hour from which an opened green wilts',
    unit: 'mm/h',
    min: 0.2,
    max: 1.5,
    default: 0.6,
    basis: COMMON,
  },
  groundDrainsMmPerH: {
    meaning: 'Water that drains from the top of the ground in an hour',
    unit: 'mm/h',
    min: 0.1,
    max: 100,
    default: 3,
    basis: 'common practice, no source; a sand green drains far faster',
  },
  softGroundMm: {
    meaning: 'Water still to drain from which the ground is too soft for machines',
    unit: 'mm',
    min: 0.5,
    max: 50,
    default: 5,
    basis: COMMON,
  },
  sandDryingShare: {
    meaning: 'Share of reference evapotranspiration at which damp sand dries on the green',
    unit: '1',
    min: 0.05,
    max: 1.5,
    default: 0.33,
    basis:
      'set so that 3 mm of damp sand takes 1.5 to 3 h in August sun and 4 to 6 h on a dull day (common practice)',
  },
  sandHoldsMm: {
    meaning: 'Most water that drizzle leaves in sand lying on a green; the rest drains',
    unit: 'mm',
    min: 0.1,
    max: 5,
    default: 0.8,
    basis: COMMON,
  },
  climateEtShare: {
    meaning:
      'Reference evapotranspiration where there is no forecast, as a share of the radiation above the atmosphere (both mm)',
    unit: '1',
    min: 0.02,
    max: 0.6,
    default: 0.16,
    basis:
      'monthly means of a maritime station at 53 N lie between 0.14 and 0.19 all year (Met Éireann record, computed)',
  },
} as const satisfies Record<string, WeatherSetting>

/** Name of a threshold. */
export type WeatherSettingName = keyof typeof WEATHER_SETTING_LIST

/** All thresholds with a value each. */
export type WeatherSettings = { readonly [name in WeatherSettingName]: number }

const entries = Object.fromEntries(
  Object.entries(WEATHER_SETTING_LIST).map(([name, setting]: [string, WeatherSetting]) => [
    name,
    v.optional(quantity(setting), setting.default),
  ]),
) as Record<WeatherSettingName, v.OptionalSchema<ReturnType<typeof quantity>, number>>

/** Schema of the thresholds: each optional, with its start value. */
export const WEATHER_SETTINGS = v.strictObject(entries)

/**
 * Thresholds with the manager's own values put in. A name that is none or a value out of range gives an error that names the field, its unit
 * and range.
 */
export const weatherSettings = (
  own: Readonly<Record<string, number>> = {},
): Result<WeatherSettings, CalculationError> => checked(WEATHER_SETTINGS, own)

/** The start values. */
export const DEFAULT_WEATHER_SETTINGS: WeatherSettings = v.parse(WEATHER_SETTINGS, {})
