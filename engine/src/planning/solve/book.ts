import { leadFrom } from './lead.ts'
import { bookPerson, shift } from './person.ts'
import { MACHINE, RECORD_HEAD, type Run } from './run.ts'
import { drawStock, takenBefore } from './stock.ts'
import { entryAt, insertAt } from './timeline.ts'
import { noteMachine, setMachineNumber, setScalar } from './undo.ts'

/** The machine's task behind the new one is brought from the new one's place: its leads begin at another minute, and so does the day of the one who brings it. */
const rerouteNext = (run: Run, row: number, gap: number, place: number): void => {
  const { found } = run.scratch
  const { machines } = run
  if (gap >= (machines.count[row] ?? 0)) return
  const at = entryAt(machines, row, gap)
  const record = (machines.data[at + MACHINE.record] ?? 0) * run.record
  const start = machines.data[at] ?? 0
  const begin =
    (machines.data[at + MACHINE.work] ?? 0) - leadFrom(run, found.machine, run.log[record] ?? 0, place)
  shift(run, run.log[record + RECORD_HEAD] ?? 0, { day: found.day, start, toStart: begin, from: place })
  setMachineNumber(run, at, begin)
}

const writeRecord = (run: Run, step: number): number => {
  const { found } = run.scratch
  const { log, record } = run
  const count = run.scalars[run.at.records] ?? 0
  const at = count * record
  log[at] = step
  log[at + 1] = found.machine
  log[at + 2] = found.start
  log[at + 3] = found.minutes
  for (let n = 0; n < found.people.length; n++) log[at + RECORD_HEAD + n] = found.people[n] ?? -1
  setScalar(run, run.at.records, count + 1)
  return count
}

const bookPeople = (run: Run, step: number, place: number): void => {
  const { entry, found } = run.scratch
  entry.day = found.day
  entry.end = found.start + found.minutes
  entry.to = place
  entry.post = run.ground.operation[step] ?? -1
  for (let n = 0; n < found.people.length; n++) {
    const person = found.people[n] ?? -1
    if (person < 0) continue
    entry.start = n === 0 ? found.start - found.lead : found.start
    entry.from = n === 0 && found.lead > 0 ? found.from : place
    bookPerson(run, person, entry)
  }
}

/** Writes the offer found for a step into the schedule. */
export const book = (run: Run, green: number, step: number): void => {
  const { ground, machines } = run
  const { found } = run.scratch
  const place = ground.greenPlace[green] ?? 0
  const row = found.machine * ground.days + found.day
  rerouteNext(run, row, found.gap, place)
  const record = writeRecord(run, step)
  const at = insertAt(machines, row, found.gap)
  machines.data[at] = found.start - found.lead
  machines.data[at + MACHINE.work] = found.start
  machines.data[at + MACHINE.end] = found.start + found.minutes
  machines.data[at + MACHINE.place] = place
  machines.data[at + MACHINE.record] = record
  machines.data[at + MACHINE.closed] = found.uses ? 1 : 0
  noteMachine(run, row, found.gap)
  bookPeople(run, step, place)
  if (found.uses) setScalar(run, run.at.loaded + found.machine, 0)
  const before = takenBefore(run, step, found.afterLoad)
  if (before >= 0) drawStock(run, step, found.start - before)
  run.placed++
}
