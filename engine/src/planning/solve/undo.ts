import type { Run } from './run.ts'
import { removeAt } from './timeline.ts'

/** Kinds of change; each is written with three numbers: row, index, what stood there. */
const PERSON_IN = 0
const MACHINE_IN = 1
const PERSON_NUMBER = 2
const MACHINE_NUMBER = 3
const SCALAR = 4
const WORK = 5

const WIDTH = 4

const push = (run: Run, kind: number, a: number, b: number, c: number): void => {
  if (run.undoLength + WIDTH > run.undo.length) {
    const longer = new Int32Array(run.undo.length * 2)
    longer.set(run.undo)
    run.undo = longer
  }
  const at = run.undoLength
  run.undo[at] = kind
  run.undo[at + 1] = a
  run.undo[at + 2] = b
  run.undo[at + 3] = c
  run.undoLength = at + WIDTH
}

/** Remembers that an entry was put into a person's day. */
export const notePerson = (run: Run, row: number, index: number): void => push(run, PERSON_IN, row, index, 0)

/** Remembers that an entry was put into a machine's day. */
export const noteMachine = (run: Run, row: number, index: number): void =>
  push(run, MACHINE_IN, row, index, 0)

/** Writes one number of a person's day. */
export const setPersonNumber = (run: Run, at: number, value: number): void => {
  push(run, PERSON_NUMBER, at, 0, run.people.data[at] ?? 0)
  run.people.data[at] = value
}

/** Writes one number of a machine's day. */
export const setMachineNumber = (run: Run, at: number, value: number): void => {
  push(run, MACHINE_NUMBER, at, 0, run.machines.data[at] ?? 0)
  run.machines.data[at] = value
}

/** Writes one of the single numbers. */
export const setScalar = (run: Run, at: number, value: number): void => {
  push(run, SCALAR, at, 0, run.scalars[at] ?? 0)
  run.scalars[at] = value
}

/** Writes one number of the greens in work. */
export const setWorkNumber = (run: Run, at: number, value: number): void => {
  push(run, WORK, at, 0, run.works[at] ?? 0)
  run.works[at] = value
}

/** Takes back everything since the undo list was so long. */
export const backTo = (run: Run, length: number): void => {
  const { undo } = run
  while (run.undoLength > length) {
    run.undoLength -= WIDTH
    const at = run.undoLength
    const kind = undo[at]
    const a = undo[at + 1] ?? 0
    const c = undo[at + 3] ?? 0
    if (kind === PERSON_IN) removeAt(run.people, a, undo[at + 2] ?? 0)
    else if (kind === MACHINE_IN) removeAt(run.machines, a, undo[at + 2] ?? 0)
    else if (kind === PERSON_NUMBER) run.people.data[a] = c
    else if (kind === MACHINE_NUMBER) run.machines.data[a] = c
    else if (kind === SCALAR) run.scalars[a] = c
    else run.works[a] = c
  }
}
