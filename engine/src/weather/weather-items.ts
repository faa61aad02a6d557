import { daylightSun } from './daylight.ts'
import { referenceEvapotranspirationHourlyItem } from './evapotranspiration-hourly.ts'
import {
  extraterrestrialRadiationItem,
  hargreavesItem,
  referenceEvapotranspirationItem,
} from './evapotranspiration-items.ts'

/** All calculations of this room. */
export const WEATHER_ITEMS = [
  daylightSun,
  referenceEvapotranspirationItem,
  referenceEvapotranspirationHourlyItem,
  hargreavesItem,
  extraterrestrialRadiationItem,
]
