import type { Layer } from './layers.ts'

const TO_60_MM: readonly Layer[] = [
  { fromMm: 0, toMm: 20, organicPercent: 6.7 },
  { fromMm: 20, toMm: 40, organicPercent: 3.1 },
  { fromMm: 40, toMm: 60, organicPercent: 2 },
]

/** The typical gradient of organic matter printed in Woods 2021 (hollow tines, solid tines and topdressing), to 80 mm. */
export const LAYERS_TO_80_MM: readonly Layer[] = [...TO_60_MM, { fromMm: 60, toMm: 80, organicPercent: 1.6 }]

/** The same profile cut off at the 70 mm that the article cores to. */
export const LAYERS_TO_70_MM: readonly Layer[] = [...TO_60_MM, { fromMm: 60, toMm: 70, organicPercent: 1.6 }]
