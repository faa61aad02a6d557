import type { TineStore, UnitsWanted } from '@swardwright/engine'
import { decimal } from './numbers.ts'
import { quantityWords } from './units.ts'

/** Sets of tines: '1 set', '0.25 sets'. */
export const setsWords = (sets: number): string => {
  const figure = decimal(sets, sets < 10 ? 2 : 0)
  return `${figure} ${Number(figure) === 1 ? 'set' : 'sets'}`
}

/** A kind of tine: 'Solid tines, 10 mm', 'Hollow tines, 12 mm (9 mm inside)'. */
export const tineName = (
  { holeDiameterMm, coreDiameterMm }: Pick<TineStore, 'holeDiameterMm' | 'coreDiameterMm'>,
  units: UnitsWanted,
): string => {
  const hole = quantityWords('tine', holeDiameterMm, units)
  return coreDiameterMm === 0
    ? `Solid tines, ${hole}`
    : `Hollow tines, ${hole} (${quantityWords('tine', coreDiameterMm, units)} inside)`
}
