import { decimal, figureOf, unitMark } from '@swardwright/present'
import type { BandT } from '../compute/figures.ts'
import { units } from '../state/course.ts'

const KG_PER_T = 1000

/** A mass of what is taken out: kilograms below a tonne, tonnes above. */
export const massWords = (kg: number): { readonly figure: string; readonly unit: string } =>
  kg < KG_PER_T ? { figure: decimal(kg, 0), unit: 'kg' } : { figure: decimal(kg / KG_PER_T, 2), unit: 't' }

/** A band of sand, low to high, in the club’s unit: '34.1 to 52.0 t'. */
export const sandBand = (band: BandT): string =>
  `${figureOf('sand', band.lowT, units.value)} to ${figureOf('sand', band.highT, units.value)} ${unitMark('sand', units.value)}`

/** Minutes as hours with one decimal: '7.5 h'. */
export const hoursWords = (minutes: number): string => `${decimal(minutes / 60, 1)} h`
