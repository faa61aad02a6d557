import { daylightSun } from './daylight.ts'
import { referenceEvapotranspirationHourlyItem } from './evapotranspirationHourly.ts'
import {
  extraterrestrialRadiationItem,
  hargreavesItem,
  referenceEvapotranspirationItem,
} from './evapotranspirationItems.ts'

/** All calculations of this room. */
export const WEATHER_ITEMS = [
  daylightSun,
  referenceEvapotranspirationItem,
  referenceEvapotranspirationHourlyItem,
  hargreavesItem,
  extraterrestrialRadiationItem,
]
