import { OPERATIONS } from '../operations.ts'
import type { ScheduledTask } from '../problem.ts'
import { bayOf, travel } from './lead.ts'
import { MACHINE, RECORD_HEAD, type Run } from './run.ts'
import { entryAt } from './timeline.ts'

type LeadTask = {
  readonly kind: 'setUp' | 'move' | 'load'
  readonly green: number | null
  readonly minutes: number
}

/** One task of a machine's day, with where the machine comes from. */
type Entry = { readonly machine: number; readonly index: number; readonly from: number; readonly at: number }

/** What the machine does before the step of an entry, in order; the first of the day begins with the set-up. */
const leadTasks = (run: Run, { machine, index, from, at }: Entry, step: number): readonly LeadTask[] => {
  const { ground } = run
  const green = ground.greenOfStep[step] ?? 0
  const goal = ground.greenPlace[green] ?? 0
  const tasks: LeadTask[] = []
  let place = from
  const moveTo = (to: number): void => {
    if (to !== place)
      tasks.push({
        kind: 'move',
        green: to === goal ? green : null,
        minutes: travel(run, machine, place, to),
      })
    place = to
  }
  const setUpMin = ground.setUpMin[machine] ?? 0
  if (index === 0 && setUpMin > 0) tasks.push({ kind: 'setUp', green: null, minutes: setUpMin })
  if (ground.needsLoad[step] === 1 && run.machines.data[at + MACHINE.closed] !== 1) {
    moveTo(bayOf(run, green))
    tasks.push({ kind: 'load', green, minutes: ground.loadMin[machine] ?? 0 })
  }
  moveTo(goal)
  return tasks
}

/** One entry as tasks: the machine's leads, then the step. */
const tasksOfEntry = (run: Run, entry: Entry): readonly ScheduledTask[] => {
  const { ground, log, machines } = run
  const { machine } = entry
  const at = (machines.data[entry.at + MACHINE.record] ?? 0) * run.record
  const step = log[at] ?? 0
  const green = ground.greenOfStep[step] ?? 0
  const done = ground.problem.greens[green]?.steps[step - (ground.firstStep[green] ?? 0)]
  const people = Array.from(log.subarray(at + RECORD_HEAD, at + run.record)).filter((person) => person >= 0)
  let begin = machines.data[entry.at] ?? 0
  const leads = leadTasks(run, entry, step).map(({ kind, green: goal, minutes }): ScheduledTask => {
    const startMin = begin
    begin += minutes
    const load = kind === 'load' ? (done?.load ?? null) : null
    return {
      kind,
      green: goal,
      pass: null,
      load,
      machine,
      people: people.slice(0, 1),
      startMin,
      finishMin: begin,
    }
  })
  const kind = OPERATIONS[ground.operation[step] ?? 0] ?? 'roll'
  const startMin = log[at + 2] ?? 0
  const finishMin = startMin + (log[at + 3] ?? 0)
  const { pass, load } = done ?? { pass: null, load: null }
  return [...leads, { kind, green, pass, load, machine, people, startMin, finishMin }]
}

/** The tasks of the schedule that stands in the run, those that stood before included, in order of start. */
export const decode = (run: Run): readonly ScheduledTask[] => {
  const { ground, machines } = run
  const tasks = [...(ground.problem.committed?.tasks ?? [])]
  for (let row = 0; row < machines.count.length; row++) {
    let from = 0
    for (let index = 0; index < (machines.count[row] ?? 0); index++) {
      const at = entryAt(machines, row, index)
      const machine = Math.floor(row / ground.days)
      if ((machines.data[at + MACHINE.record] ?? -1) >= 0)
        tasks.push(...tasksOfEntry(run, { machine, index, from, at }))
      from = machines.data[at + MACHINE.place] ?? 0
    }
  }
  return tasks.sort(
    (a, b) => a.startMin - b.startMin || a.finishMin - b.finishMin || (a.machine ?? -1) - (b.machine ?? -1),
  )
}
