import { AGRONOMY_SOURCES } from './agronomy-sources.ts'
import type { Source } from './source.ts'

export type { Source }

/** Every source that a formula or a check cites, one id each. */
export const SOURCES = {
  ...AGRONOMY_SOURCES,
  geometry: {
    author: 'Swardwright',
    year: 2026,
    title: 'Plain geometry, worked by hand from the stated inputs',
    publisher: 'this project',
  },
  fao56: {
    author: 'Allen, Pereira, Raes, Smith',
    year: 1998,
    title:
      'Crop evapotranspiration: guidelines for computing crop water requirements (Irrigation and Drainage Paper 56)',
    publisher: 'FAO',
    url: 'https://www.fao.org/4/X0490E/x0490e00.htm',
  },
  meeusAlgorithms1998: {
    author: 'Meeus',
    year: 1998,
    title:
      'Astronomical Algorithms, second edition (chapters 25 and 28), as used by the NOAA solar calculator',
    publisher: 'Willmann-Bell',
  },
  usnoSunTables: {
    author: 'US Naval Observatory',
    year: 2026,
    title: 'One-day tables of sun and twilight',
    publisher: 'US Naval Observatory',
    url: 'https://aa.usno.navy.mil/data/RS_OneDay',
  },
  christiansen1942: {
    author: 'Christiansen',
    year: 1942,
    title: 'Irrigation by sprinkling (Bulletin 670)',
    publisher: 'University of California Agricultural Experiment Station',
  },
} as const satisfies Record<string, Source>

/** The id of a source in the list. */
export type SourceId = keyof typeof SOURCES
