import { OPERATIONS } from '../operations.ts'
import { NEVER } from '../spans.ts'
import type { ScheduledTask } from '../problem.ts'
import { walkTasks, type WalkTask } from '../walk.ts'
import { bookPerson } from './person.ts'
import { MACHINE, type Run } from './run.ts'
import { drawStock } from './stock.ts'
import { FIRST_TINES } from './supplies.ts'
import { insertAt } from './timeline.ts'
import type { Try } from './windows.ts'
import { addWork } from './works.ts'

/** Index among all steps of the dressing that a load is for, -1 where that can't be told. */
const servedStep = (run: Run, task: ScheduledTask): number => {
  const { ground } = run
  if (task.green === null) return -1
  const index = ground.problem.greens[task.green]?.steps.findIndex(
    (step) => step.operation === 'dress' && step.load === task.load,
  )
  return index === undefined || index < 0 ? -1 : (ground.firstStep[task.green] ?? 0) + index
}

/** Whether a machine's last task is a way to the bay: a dresser driven off without naming a green is going to fill. */
const isWayToBay = (run: Run, { task }: WalkTask, loaded: number): boolean => {
  const machine = task.machine === null ? undefined : run.ground.problem.machines[task.machine]
  return task.kind === 'move' && task.green === null && loaded === 0 && (machine?.hopperT ?? null) !== null
}

const passMachine = (run: Run, walked: WalkTask, isLast: boolean): void => {
  const { at, ground, machines, scalars } = run
  const { task, day, to } = walked
  if (task.machine === null) return
  const served = task.kind === 'load' ? servedStep(run, task) : -1
  const hopper = at.loaded + task.machine
  if (task.kind === 'dress') scalars[hopper] = 0
  if (served >= 0) scalars[hopper] = served + 1
  const row = task.machine * ground.days + day
  const entry = insertAt(machines, row, machines.count[row] ?? 0)
  machines.data[entry] = task.startMin
  machines.data[entry + MACHINE.work] = task.startMin
  machines.data[entry + MACHINE.end] = task.finishMin
  machines.data[entry + MACHINE.place] =
    isLast && isWayToBay(run, walked, scalars[hopper] ?? 0) ? (ground.bay[0] ?? 0) : to
  machines.data[entry + MACHINE.record] = -1
  machines.data[entry + MACHINE.closed] = 1
  if (served >= 0) drawStock(run, served, task.startMin)
}

const passGreen = (run: Run, { task, stepIndex }: WalkTask): void => {
  const { begun, ground } = run
  if (task.green === null || stepIndex < 0) return
  const { green } = task
  const step = (ground.firstStep[green] ?? 0) + stepIndex
  begun.next[green] = Math.max(begun.next[green] ?? 0, step + 1)
  begun.end[green] = Math.max(begun.end[green] ?? 0, task.finishMin)
  if (task.kind === 'dress') begun.dressed[green] = task.finishMin
  if ((ground.stockOfStep[step] ?? -1) >= FIRST_TINES) drawStock(run, step, task.startMin)
  if (step === ground.openStep[green]) {
    begun.opened[green] = task.startMin
    begun.openedBy[green] = task.finishMin
  }
  if (step === ground.finishStep[green])
    addWork(
      run,
      green,
      begun.opened[green] ?? task.startMin,
      begun.openedBy[green] ?? task.startMin,
      task.finishMin,
    )
}

/** The window in which a green was opened, and what its finish is bound to; null where it was opened outside of any. */
const openedIn = ({ begun, ground }: Run, green: number): Try | null => {
  const opened = begun.opened[green] ?? -1
  const isFinished = (begun.next[green] ?? 0) > (ground.finishStep[green] ?? 0)
  const window = isFinished
    ? ground.windows[0]
    : ground.windows.find(({ startMin, endMin }) => opened >= startMin && opened < endMin)
  if (window === undefined) return null
  return {
    window,
    attempt: { keepFixtures: false, overNight: ground.problem.settings.mayStandDryNight, lets: 0 },
  }
}

/**
 * Writes what stands already into the beginning of every schedule: machines and people go on from where their tasks leave them, sand is drawn, greens are as far
 * as their done steps. Nothing of it is ever taken back.
 */
export const writeBegin = (run: Run): void => {
  const { at, begun, ground, scalars } = run
  scalars.fill(0)
  scalars[at.firstOpened] = NEVER
  const tasks = walkTasks(ground.problem, ground.problem.committed?.tasks ?? [])
  tasks.forEach((walked, index) => {
    const { task, day, from, to, stepIndex } = walked
    const isLast = !tasks.slice(index + 1).some((other) => other.task.machine === task.machine)
    const post = stepIndex < 0 ? -1 : OPERATIONS.findIndex((operation) => operation === task.kind)
    for (const person of task.people)
      bookPerson(run, person, { day, start: task.startMin, end: task.finishMin, from, to, post })
    passMachine(run, walked, isLast)
    passGreen(run, walked)
  })
  for (let green = 0; green < ground.greens; green++) {
    const next = begun.next[green] ?? 0
    const last = ground.firstStep[green + 1] ?? 0
    for (let step = next; step < last; step++)
      if (ground.choiceFirst[step] === ground.choiceFirst[step + 1]) begun.hopeless[green] = 1
    if (next < last && begun.hopeless[green] !== 1) begun.movable.push(green)
    if ((begun.opened[green] ?? -1) < 0) continue
    begun.where[green] = openedIn(run, green)
    if (next > (ground.finishStep[green] ?? 0)) continue
    begun.work[green] = scalars[at.works] ?? 0
    addWork(run, green, begun.opened[green] ?? 0, begun.openedBy[green] ?? 0, ground.problem.horizonMin)
  }
  run.undoLength = 0
}
