import { computed } from '@preact/signals'
import type { DayFact, PlanTask } from '@swardwright/engine'
import type { StepTold } from '../compute/crew-view.ts'
import { dayAsk } from './day.ts'

/** What was told of a step, by green, operation, pass and load. */
export const stepTold = computed((): ((task: PlanTask) => StepTold) => {
  const told = dayAsk.value?.facts ?? []
  const isOf = (fact: DayFact, task: PlanTask): boolean =>
    (fact.kind === 'started' || fact.kind === 'finished' || fact.kind === 'stopped') &&
    fact.green === task.green &&
    fact.operation === task.operation &&
    (task.load === null ? (fact.pass ?? 1) === task.pass : (fact.load ?? 1) === task.load)
  return (task) => {
    const own = told.filter((fact) => isOf(fact, task))
    const last = own.at(-1)?.kind
    const done = own.some(({ kind }) => kind === 'finished')
    return { done, begun: !done && last === 'started', stopped: !done && last === 'stopped' }
  }
})
