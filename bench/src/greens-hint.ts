import {
  chainMarks,
  subtractSpans,
  type Problem,
  type Schedule,
  type ScheduledTask,
} from '@swardwright/engine'
import type { WeekModel } from './greens-model.ts'

/** The task of a step; throws where the schedule has none. */
const taskOf = (problem: Problem, { tasks }: Schedule, green: number, step: number): ScheduledTask => {
  const wanted = problem.greens[green]?.steps[step]
  const found = tasks.find(
    (task) =>
      task.green === green &&
      task.kind === wanted?.operation &&
      task.pass === wanted.pass &&
      task.load === wanted.load,
  )
  if (found === undefined) throw new Error(`step ${step} of green ${green} is not in the plan`)
  return found
}

const beginSteps = ({ model, steps }: WeekModel, problem: Problem, begun: Schedule): void => {
  for (const { green, step, start, length, end, choices, people } of steps) {
    const task = taskOf(problem, begun, green, step)
    model.addHint(start, task.startMin)
    model.addHint(length, task.finishMin - task.startMin)
    model.addHint(end, task.finishMin)
    for (const { machine, chosen } of choices) model.addHint(chosen, machine === task.machine ? 1 : 0)
    for (const { person, works } of people) model.addHint(works, task.people.includes(person) ? 1 : 0)
  }
}

const beginGreens = ({ model, greens }: WeekModel, problem: Problem, begun: Schedule): void => {
  const spanOf = (index: number): { readonly opened: number; readonly finished: number } => {
    const green = problem.greens[index]
    if (green === undefined) throw new Error('no such green')
    const { open, finish } = chainMarks(green)
    return {
      opened: taskOf(problem, begun, index, open).startMin,
      finished: taskOf(problem, begun, index, finish).finishMin,
    }
  }
  const soonest = Math.min(...greens.map(({ green }) => spanOf(green).opened))
  for (const { green, windows, inWork, first } of greens) {
    const { opened, finished } = spanOf(green)
    model.addHint(inWork, finished - opened)
    for (const { window, chosen } of windows)
      model.addHint(chosen, opened >= window.start && opened < window.end ? 1 : 0)
    if (first !== null) model.addHint(first, opened === soonest ? 1 : 0)
  }
}

/** Breaks in the first stretch of their window that the tasks leave free for long enough. */
const beginBreaks = ({ model, breaks }: WeekModel, begun: Schedule): void => {
  for (const { person, window, minutes, start } of breaks) {
    const busy = begun.tasks
      .filter(({ people }) => people.includes(person))
      .map(({ startMin, finishMin }) => ({ start: startMin, end: finishMin }))
      .toSorted((a, b) => a.start - b.start)
    const free = subtractSpans([window], busy).find((span) => span.end - span.start >= minutes)
    if (free !== undefined) model.addHint(start, free.start)
  }
}

/**
 * Lets the general engine begin at a schedule of all greens, one dry stretch each. Every variable is told: it takes a beginning at once only when nothing of it is left open.
 * Throws where the schedule lacks a step.
 */
export const beginAt = (week: WeekModel, problem: Problem, begun: Schedule): void => {
  beginSteps(week, problem, begun)
  beginGreens(week, problem, begun)
  beginBreaks(week, begun)
  week.model.addHint(week.finish, Math.max(...begun.tasks.map(({ finishMin }) => finishMin)))
}
