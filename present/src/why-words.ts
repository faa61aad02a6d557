import type { Hold, PlanTask, WhyTask } from '@swardwright/engine'
import { TASK_WORDS, taskTodo } from './operation-words.ts'
import type { PlanNames } from './plan-words.ts'
import { clock, durationWords } from './times.ts'

/** Words of a task that another one waits for: 'coring 7 Long Meadow, till 10:20'. */
const waitedFor = (task: PlanTask | undefined, names: PlanNames): string => {
  if (task === undefined) return 'the work before'
  const green = task.green === null ? '' : ` ${names.greens.get(task.green) ?? task.green}`
  return `${TASK_WORDS[task.operation].work}${green}, till ${clock(task.finish, names.timeZone)}`
}

type Say = (task: PlanTask | undefined, at: string, names: PlanNames, own: PlanTask) => string

const SAID: Readonly<Record<Hold, Say>> = {
  stepBefore: (task, _, n) => `the step before it: ${waitedFor(task, n)}`,
  wait: (task, at, n) => `the wait after ${waitedFor(task, n)}: ready at ${at}`,
  drying: (_, at) => `the sand, which is dry at ${at}`,
  machineBusy: (task, at, n) => `its machine, which does ${waitedFor(task, n)}: ready here at ${at}`,
  setUp: (_, at) => `the set-up of its machine: ready at ${at}`,
  way: (_, at) => `the way of its machine: there at ${at}`,
  filling: (_, at) => `the filling of the hopper: full at ${at}`,
  personBusy: (task, at, n) => `its people, who are at ${waitedFor(task, n)}: here at ${at}`,
  rest: (_, at) => `a break, which is over at ${at}`,
  shift: (_, at) => `the start of work: people are here at ${at}`,
  hours: (_, at, _n, own) => `the hours: ${TASK_WORDS[own.operation].work} may begin at ${at}`,
  rain: (_, at) => `the rain, which ends at ${at}`,
  firstGreenCheck: (task, at, n) =>
    `the look over the first green after ${waitedFor(task, n)}: done at ${at}`,
  delivery: (_, at) => `a delivery, which comes at ${at}: before it there is too little in stock`,
  nothing: () => 'nothing',
}

/** Why a task is where it is, in sentences: what binds first, then what would bind next. Nothing for a task that the plan does not have. */
export const whySentences = (why: WhyTask, names: PlanNames): readonly string[] => {
  const own = names.tasks.get(why.task)
  if (own === undefined) return []
  const said = why.reasons.map(({ hold, earliest, task }) =>
    SAID[hold](
      task === null ? undefined : names.tasks.get(task),
      clock(earliest, names.timeZone),
      names,
      own,
    ),
  )
  const start = `${taskTodo(own)} starts at ${clock(own.start, names.timeZone)}`
  const begun = start.charAt(0).toLocaleUpperCase('en-GB') + start.slice(1)
  const [first, second, ...others] = said
  if (first === undefined) return [`${begun}.`]
  const next = (words: readonly string[]): readonly string[] =>
    words.slice(0, 2).map((one) => `Next in line: ${one}.`)
  return why.spareMin > 0
    ? [
        `${begun}, ${durationWords(why.spareMin)} later than it must: the plan leaves it this room.`,
        ...(second === undefined ? [] : [`It could not start before ${second}.`]),
        ...next(others),
      ]
    : [`${begun}, no earlier because of ${first}.`, ...next(said.slice(1))]
}
