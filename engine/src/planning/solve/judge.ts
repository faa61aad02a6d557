import type { Made } from './generate.ts'
import { travel } from './lead.ts'
import { MACHINE, PERSON, type Run } from './run.ts'
import { entryAt } from './timeline.ts'
import { eachWork } from './works.ts'

/**
 * What a generated schedule is judged by while it stands in the run; all as small as can be, whole numbers. The same as the score of its tasks, and the changes of
 * post, which come last of all.
 */
export type Judged = {
  unfinishedGreens: number
  fixtureClashes: number
  shutGreenDays: number
  finishMin: number
  /** Sum over the greens of their last finish times their work, square minutes: what leads the search where the very last finish gives no slope. */
  workedSum: number
}

const SHED = 0

/** Judges the greens of a schedule, by what they are shut for and when they are done. `stoodMin` is the last finish of what stood before. */
export const judgeGreens = (run: Run, made: Made, stoodMin: number): Judged => {
  const { greenMin, problem } = run.ground
  const judged = {
    unfinishedGreens: problem.excluded.length,
    fixtureClashes: 0,
    shutGreenDays: 0,
    finishMin: stoodMin,
    workedSum: 0,
  }
  for (let green = 0; green < made.ends.length; green++) {
    const end = made.ends[green] ?? -1
    if (end < 0) judged.unfinishedGreens++
    else {
      judged.workedSum += end * (greenMin[green] ?? 0)
      if (end > judged.finishMin) judged.finishMin = end
    }
  }
  eachWork(run, (green, opened, finished) => {
    if ((made.ends[green] ?? -1) < 0) return
    for (const fixture of problem.greens[green]?.fixtures ?? [])
      if (fixture.start < finished && fixture.end > opened) judged.fixtureClashes++
    for (const day of problem.days) if (day.startMin < finished && day.endMin > opened) judged.shutGreenDays++
  })
  return judged
}

/** Minutes that people work after ordinary time, and how often somebody goes from one kind of work to another within a day. */
export const judgePeople = (run: Run): { readonly overtimeMin: number; readonly postChanges: number } => {
  const { ground, people } = run
  let overtimeMin = 0
  let postChanges = 0
  for (let row = 0; row < people.count.length; row++) {
    const count = people.count[row] ?? 0
    if (count === 0) continue
    const last = people.data[entryAt(people, row, count - 1) + PERSON.end] ?? 0
    overtimeMin += Math.max(0, last - (ground.ordinaryEnd[ground.shiftFirst[row] ?? 0] ?? last))
    let post = -1
    for (let i = 0; i < count; i++) {
      const next = people.data[entryAt(people, row, i) + PERSON.post] ?? -1
      if (next < 0) continue
      if (post >= 0 && next !== post) postChanges++
      post = next
    }
  }
  return { overtimeMin, postChanges }
}

/** Minutes of driving machines from place to place that the schedule adds to what stood before. */
export const judgeTravel = (run: Run): number => {
  const { ground, log, machines, record } = run
  let minutes = 0
  for (let row = 0; row < machines.count.length; row++) {
    const machine = Math.floor(row / ground.days)
    let from = SHED
    for (let i = 0; i < (machines.count[row] ?? 0); i++) {
      const at = entryAt(machines, row, i)
      const place = machines.data[at + MACHINE.place] ?? SHED
      const entry = machines.data[at + MACHINE.record] ?? -1
      const step = log[entry * record] ?? 0
      if (entry >= 0 && ground.needsLoad[step] === 1 && machines.data[at + MACHINE.closed] !== 1) {
        const bay = ground.bay[ground.sandKind[ground.greenOfStep[step] ?? 0] ?? 0] ?? SHED
        minutes += travel(run, machine, from, bay) + travel(run, machine, bay, place)
      } else if (entry >= 0) minutes += travel(run, machine, from, place)
      from = place
    }
  }
  return minutes
}
