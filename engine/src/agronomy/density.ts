/** Bulk density of pure organic matter in a green, kg/m3 (Woods 2021, hollow tine, solid tine and topdressing). */
export const ORGANIC_DENSITY_KG_PER_M3 = 220

/** Bulk density of sand in a green, kg/m3 (Woods 2021, the same article). */
export const SAND_DENSITY_KG_PER_M3 = 1560

/**
 * Bulk density of sand with organic matter in it, kg/m3; volumes add: `rho = 1 / (x / 0.22 + (1 - x) / 1.56)` in g/cm3,
 * x = organic share by mass (0 to 1). The article prints only the two densities; adding volumes gives back every mass in it
 * (90,429 g, 3,082 g, 4,092 g), a straight mean of the densities does not (105,823 g). Example: x = 0.067 gives 1,108 kg/m3.
 */
export const bulkDensityOf = (organicShare: number): number =>
  1 / (organicShare / ORGANIC_DENSITY_KG_PER_M3 + (1 - organicShare) / SAND_DENSITY_KG_PER_M3)
