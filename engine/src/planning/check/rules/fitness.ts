import type { ProblemMachine } from '../../problem.ts'
import { stepOf, type Facts, type TaskFact } from '../facts.ts'
import { findingOf, type RuleCheck } from '../finding.ts'
import { UNKNOWN } from '../read-tasks.ts'
import { isOperation } from '../steps.ts'

const machineOf = (facts: Facts, task: TaskFact): ProblemMachine | null =>
  task.machine === null ? null : (facts.problem.machines[task.machine] ?? null)

const machineFits = (facts: Facts, task: TaskFact): boolean => {
  if (task.machine === UNKNOWN) return true
  const machine = machineOf(facts, task)
  const { kind } = task
  if (kind === 'setUp' || kind === 'move') return machine !== null
  if (kind === 'load') return machine !== null && machine.hopperT !== null
  const step = stepOf(facts, task)
  if (machine === null) return step === null || step.minutesByMachine.size === 0
  return step === null || step.minutesByMachine.size === 0
    ? machine.operations.includes(kind)
    : step.minutesByMachine.has(machine.id)
}

/** Rule 4, `wrongMachine`: the machine can do the operation on that green; a machine task has one that can do it. Counts 1. */
export const wrongMachine: RuleCheck = (facts) =>
  facts.tasks.flatMap((task) => (machineFits(facts, task) ? [] : [findingOf('wrongMachine', task, 1)]))

/** Rule 4, `noSkill`: everyone has the skill for the operation, on a machine task for something that the machine does. Counts people. */
export const noSkill: RuleCheck = (facts) =>
  facts.tasks.flatMap((task) => {
    const { kind } = task
    const machine = machineOf(facts, task)
    const anyOf = kind === 'setUp' || kind === 'move' || kind === 'load' ? machine?.operations : [kind]
    if (anyOf === undefined) return []
    const without = task.people.filter((index) => {
      const person = facts.problem.people[index]
      return person !== undefined && !anyOf.some((operation) => person.skills.has(operation))
    })
    return without.length > 0 ? [findingOf('noSkill', task, without.length)] : []
  })

/** Rule 4, `crewShort`: the machine's crew works on an operation; one person is enough for hand work and machine tasks. Counts people. */
export const crewShort: RuleCheck = (facts) =>
  facts.tasks.flatMap((task) => {
    const crew = isOperation(task) ? (machineOf(facts, task)?.crew ?? 1) : 1
    return task.people.length < crew ? [findingOf('crewShort', task, crew - task.people.length)] : []
  })
