/** Saturation vapour pressure over water at an air temperature in degrees C, kPa. FAO-56 equation 11. */
export const saturationVapourPressureKPa = (temperatureC: number): number =>
  0.6108 * Math.exp((17.27 * temperatureC) / (temperatureC + 237.3))

/** Slope of the saturation vapour pressure curve, kPa per degree C. FAO-56 equation 13. */
export const vapourPressureSlopeKPaPerC = (temperatureC: number): number =>
  (4098 * saturationVapourPressureKPa(temperatureC)) / (temperatureC + 237.3) ** 2

/** Temperature at which air of this vapour pressure (kPa, above 0) is saturated, degrees C: FAO-56 equation 14 turned round. */
export const dewPointC = (vapourPressureKPa: number): number => {
  const x = Math.log(vapourPressureKPa / 0.6108)
  return (237.3 * x) / (17.27 - x)
}

/** Dew point from temperature (C) and relative humidity (%, 0 to 100), degrees C. Humidity under 1 % counts as 1 %. */
export const dewPointFromHumidityC = (temperatureC: number, humidityPercent: number): number =>
  dewPointC((saturationVapourPressureKPa(temperatureC) * Math.max(humidityPercent, 1)) / 100)

/** Relative humidity from temperature and dew point, %, never over 100. */
export const humidityPercentOf = (temperatureC: number, dewC: number): number =>
  Math.min(100, (100 * saturationVapourPressureKPa(dewC)) / saturationVapourPressureKPa(temperatureC))
