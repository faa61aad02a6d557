import type { Course, Machine, Person } from '../course/course.ts'
import { MINUTE_MS, instantOf } from '../time/zone.ts'
import { OPERATIONS_BY_MACHINE_KIND } from './operations.ts'
import { machineTravelMinutes, type Places } from './places.ts'
import type { ProblemBreak, ProblemDay, ProblemMachine, ProblemPerson, Span } from './problem.ts'

/** Minutes after midnight of a clock time 'HH:MM'. */
export const minuteOfClock = (clock: string): number => {
  const [hours = 0, minutes = 0] = clock.split(':').map(Number)
  return hours * 60 + minutes
}

/** A clock time of a day as minutes from the origin, summer-time changes included. */
export const minuteAt = (course: Course, originMs: number, date: string, clock: string): number =>
  Math.round((instantOf(date, minuteOfClock(clock), course.timeZone) - originMs) / MINUTE_MS)

/** A machine as the problem holds it. A day on its `outOn` list takes it away for that day. */
export const readMachine = (
  machine: Machine,
  days: readonly ProblemDay[],
  places: Places,
): ProblemMachine => ({
  id: machine.id,
  kind: machine.kind,
  operations: OPERATIONS_BY_MACHINE_KIND[machine.kind],
  crew: machine.crew,
  setUpMin: machine.setUpMin,
  hopperT: machine.hopperT ?? null,
  loadMin: machine.loadMin ?? 0,
  available: days
    .filter((day) => machine.outOn?.includes(day.date) !== true)
    .map((day) => ({ start: day.startMin, end: day.endMin })),
  travelMin: machineTravelMinutes(places, machine),
})

/** A person's shifts with the course set-up and packing up taken off, and the breaks of those days. */
export const readPerson = (
  course: Course,
  person: Person,
  originMs: number,
  days: readonly ProblemDay[],
): ProblemPerson => {
  const shifts: Span[] = []
  const ordinaryEndMin: number[] = []
  const breaks: ProblemBreak[] = []
  for (const { date } of days) {
    if (person.awayOn?.includes(date) === true) continue
    const at = (clock: string): number => minuteAt(course, originMs, date, clock)
    const start = Math.max(
      at(person.shift.from),
      person.courseSetUpUntil === null ? 0 : at(person.courseSetUpUntil),
    )
    const ordinaryEnd = at(person.shift.to) - course.settings.packUpMin
    const end = ordinaryEnd + person.overtimeMin
    if (end <= start) continue
    shifts.push({ start, end })
    ordinaryEndMin.push(ordinaryEnd)
    for (const pause of person.breaks)
      breaks.push({ window: { start: at(pause.earliest), end: at(pause.latest) }, minutes: pause.minutes })
  }
  return { id: person.id, skills: new Set(person.skills), shifts, ordinaryEndMin, breaks }
}
