import { computed, effect } from '@preact/signals'
import type { GreenFigures } from '../compute/figures.ts'
import type { Work } from '../compute/work.ts'
import { compute } from './compute.ts'
import { course } from './course.ts'
import { latest } from './latest.ts'
import { prescription } from './prescription.ts'

const derived = latest<Work['figures']['output']>()

/** Keeps the figures level with course and prescription. Call once. */
export const followFigures = (): void => {
  effect(() => {
    const [known, prescribed] = [course.value, prescription.value]
    if (known === null || prescribed === null) derived.clear()
    else derived.ask(() => compute('figures', { course: known, prescription: prescribed }))
  })
}

/** True while figures are being worked out anew. */
export const figuresPending = derived.pending

/** What the prescription means, green by green and in all; null until it is known, or where it contradicts itself. */
export const figures = computed(() => {
  const answer = derived.value.value
  return answer !== null && answer.ok ? answer.value : null
})

/** Why there are no figures: the settings contradict each other. */
export const figuresError = computed(() => {
  const answer = derived.value.value
  return answer === null || answer.ok ? null : answer.error
})

/** The figures of one green. */
export const figuresOf = (green: string): GreenFigures | undefined =>
  figures.value?.greens.find((one) => one.green === green)
