import { deriveOperations, ok } from '@swardwright/engine'
import { greenFigures } from '../figures.ts'
import { courseTotals } from '../totals.ts'
import type { Doing } from '../work.ts'

export const figures: Doing<'figures'> = ({ course, prescription }) => {
  const derived = deriveOperations(course, prescription)
  if (!derived.ok) return derived
  const greens = derived.value.works.map((work) => greenFigures(course, work))
  const kinds = new Map(prescription.groups.map((group) => [group.id, group.sand.kind]))
  return ok({ greens, totals: courseTotals(course, greens, kinds), excluded: derived.value.excluded })
}
