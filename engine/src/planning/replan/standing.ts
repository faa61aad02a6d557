import { chainMarks } from '../chain.ts'
import type { Problem, ScheduledTask } from '../problem.ts'
import { NEVER } from '../spans.ts'
import { fitsShifts, newWalk, passTask, settledStart, walkTasks, type Walk, type WalkTask } from '../walk.ts'
import { isWork } from './field.ts'
import { cutBy, lastTold, outageAt, type Moment, type Spell } from './moment.ts'
import { byTime } from './old-plan.ts'

/** A spell of work that was broken off: its task, and the share of the step that it did (null: the time worked tells). */
export type Part = { readonly task: ScheduledTask; readonly step: number; readonly doneShare: number | null }

/** Where the work stands: the tasks begun before now, and which of them are only parts of their step. */
export type Standing = { readonly tasks: readonly ScheduledTask[]; readonly parts: readonly Part[] }

/** How much longer a task is taken to run that should be over but was not told finished: a tenth of its minutes, at least one (common practice, no source). */
const OVERDUE_SHARE = 0.1

/** Times the planned minutes that a step takes a machine today; 1 where nothing was learned or said. */
export type FactorOf = (green: number, step: number, machine: number) => number

/** Latest starts of steps that are told done by a later tap on their green; NEVER where nothing bounds them. Steps later than the last told have none. */
const latestStarts = (
  problem: Problem,
  moment: Moment,
  minutesOf: MinutesOf,
): readonly (readonly number[])[] =>
  problem.greens.map(({ steps }, green) => {
    const latest = steps.map(() => NEVER)
    let bound = NEVER
    for (let step = lastTold(moment, problem, green); step >= 0; step--) {
      const first = moment.spells[green]?.[step]?.[0]
      const end = Math.min(bound, first?.endMin ?? NEVER)
      bound = Math.min(first?.startMin ?? NEVER, end >= NEVER ? NEVER : end - minutesOf(green, step))
      latest[step] = bound
    }
    return latest
  })

type MinutesOf = (green: number, step: number) => number

const plannedMinutes = (problem: Problem, tasks: readonly WalkTask[]): MinutesOf => {
  const planned = new Map<string, number>()
  for (const walked of tasks) {
    if (walked.stepIndex < 0 || planned.has(keyOf(walked))) continue
    planned.set(keyOf(walked), walked.task.finishMin - walked.task.startMin)
  }
  return (green, step) => {
    const own = planned.get(`${green} ${step}`)
    if (own !== undefined) return own
    const minutes = [...(problem.greens[green]?.steps[step]?.minutesByMachine.values() ?? [])]
    return minutes.length === 0 ? 1 : Math.min(...minutes)
  }
}

/** The old plan's tasks, and by when what brings a machine to a step that is told begun must have started. */
type Led = { readonly tasks: readonly ScheduledTask[]; readonly leadBy: ReadonlyMap<ScheduledTask, number> }

/** The same tasks with what brings a machine to a step that was begun before its time brought forward with it. */
const withEarlyLeads = (
  tasks: readonly ScheduledTask[],
  startOf: (task: ScheduledTask) => number | null,
): Led => {
  const moved = [...tasks]
  const leadBy = new Map<ScheduledTask, number>()
  tasks.forEach((task, index) => {
    const told = isWork(task) ? startOf(task) : null
    if (told === null) return
    const off = told - task.startMin
    const early = Math.min(0, off)
    moved[index] = { ...task, startMin: task.startMin + early, finishMin: task.finishMin + early }
    for (let before = index - 1; before >= 0; before--) {
      const lead = tasks[before]
      if (lead?.machine !== task.machine || lead === undefined) continue
      if (isWork(lead)) break
      const brought = { ...lead, startMin: lead.startMin + early, finishMin: lead.finishMin + early }
      moved[before] = brought
      leadBy.set(brought, lead.startMin + off)
    }
  })
  return { tasks: moved.sort(byTime), leadBy }
}

/** What is known of the day while the old plan is walked through. */
type Day = {
  readonly moment: Moment
  readonly walk: Walk
  readonly latest: readonly (readonly number[])[]
  readonly leadBy: Led['leadBy']
  readonly told: readonly number[]
  readonly factor: FactorOf
}

/** First start of a shift of one of the people after a minute; NEVER where there is none. */
const nextShift = (problem: Problem, people: readonly number[], after: number): number =>
  people
    .flatMap((person) => problem.people[person]?.shifts ?? [])
    .reduce((first, { start }) => (start > after ? Math.min(first, start) : first), NEVER)

/** Start that the plan, the resources, the shifts and the outages allow. */
const expectedStart = ({ moment, walk }: Day, walked: WalkTask): number => {
  const { task } = walked
  const { problem } = walk
  const minutes = task.finishMin - task.startMin
  let start = settledStart(walk, walked, 0)
  for (;;) {
    if (start >= NEVER) return NEVER
    // A task that the old plan has outside a shift is taken as it is.
    const fits = start === task.startMin || fitsShifts(problem, task.people, start, start + minutes)
    const out =
      (task.machine === null ? undefined : outageAt(moment.machinesOut, task.machine, start)) ??
      task.people.flatMap((person) => outageAt(moment.peopleOut, person, start) ?? [])[0]
    if (fits && out === undefined) return start
    const least = out?.untilMin ?? nextShift(problem, task.people, start)
    if (least >= NEVER) return NEVER
    start = settledStart(walk, walked, least)
  }
}

/** Start and finish of one spell, and whether it was broken off. */
type Told = { readonly start: number; readonly finish: number; readonly cut: boolean }

const running = (day: Day, start: number, minutes: number): number => {
  const { nowMin } = day.moment
  const over = Math.max(1, Math.ceil(minutes * OVERDUE_SHARE))
  return start + minutes > nowMin ? start + minutes : nowMin + over
}

/** Minutes that a task takes that runs now: the plan's own where nothing was learned, else the problem's at today's pace. */
const minutesNow = ({ walk, factor }: Day, { task, step, stepIndex }: WalkTask): number => {
  const planned = task.finishMin - task.startMin
  if (task.green === null || task.machine === null || step === null) return planned
  const today = factor(task.green, stepIndex, task.machine)
  const id = walk.problem.machines[task.machine]?.id ?? ''
  return today === 1 ? planned : Math.max(1, Math.round((step.minutesByMachine.get(id) ?? planned) * today))
}

/** How a task went as far as it was told, or as the plan has it. */
const spellOf = (day: Day, walked: WalkTask, spell: Spell | undefined, expected: number): Told => {
  const { task, stepIndex } = walked
  const { moment } = day
  const planned = task.finishMin - task.startMin
  const minutes = minutesNow(day, walked)
  const bound =
    task.green === null || stepIndex < 0
      ? (day.leadBy.get(task) ?? NEVER)
      : (day.latest[task.green]?.[stepIndex] ?? NEVER)
  if (spell?.endMin !== null && spell?.endMin !== undefined) {
    const start = spell.startMin ?? Math.max(0, Math.min(expected, Math.max(spell.endMin - planned, 0)))
    return { start: Math.min(start, spell.endMin), finish: spell.endMin, cut: spell.end === 'stopped' }
  }
  const isLast = task.green !== null && day.told[task.green] === stepIndex
  if (spell !== undefined && isLast && spell.startMin !== null) {
    // Begun, not told finished, nothing after it told: it runs.
    const finish = running(day, spell.startMin, minutes)
    const cut = cutBy(moment, task, spell.startMin, finish)
    return { start: spell.startMin, finish: Math.min(finish, cut), cut: cut < NEVER }
  }
  const start = Math.min(spell?.startMin ?? expected, bound)
  if (bound < NEVER) return { start, finish: start + planned, cut: false }
  const finish = start + (start + planned > moment.nowMin ? minutes : planned)
  const cut = start < moment.nowMin ? cutBy(moment, task, start, finish) : NEVER
  return { start, finish: Math.min(finish, cut), cut: cut < NEVER && isWork(task) }
}

const passAt = (walk: Walk, walked: WalkTask, { start, finish }: Told): ScheduledTask => {
  const task = { ...walked.task, startMin: start, finishMin: finish }
  passTask(walk, { ...walked, task }, start)
  return task
}

/**
 * Where the work stands at `now`: what was told wins; where nothing was told, the old plan is taken to have been followed, pushed later only by what was
 * told before it. A tap on a later step of a green says that the earlier ones are done. A task told begun and nothing more is running. A machine or
 * person that goes out breaks off what they are on.
 */
export const standingAt = (
  problem: Problem,
  oldTasks: readonly ScheduledTask[],
  moment: Moment,
  factor: FactorOf,
): Standing => {
  const first = walkTasks(problem, oldTasks)
  const latest = latestStarts(problem, moment, plannedMinutes(problem, first))
  const told = problem.greens.map((_, green) => lastTold(moment, problem, green))
  const stepOfTask = new Map(first.map((walked) => [walked.task, walked.stepIndex]))
  const startOf = (task: ScheduledTask): number | null => {
    const step = stepOfTask.get(task) ?? -1
    if (task.green === null || step < 0) return null
    const bound = latest[task.green]?.[step] ?? NEVER
    return (
      moment.spells[task.green]?.[step]?.[0]?.startMin ??
      (bound < NEVER ? Math.min(task.startMin, bound) : null)
    )
  }
  const led = withEarlyLeads(oldTasks, startOf)
  const walked = walkTasks(problem, led.tasks)
  const day: Day = { moment, walk: newWalk(problem), latest, leadBy: led.leadBy, told, factor }
  const stood: Stood = { tasks: [], parts: [], done: new Map() }
  const seen = new Map<string, number>()
  const inAll = new Map<string, number>()
  for (const one of walked) if (one.stepIndex >= 0) inAll.set(keyOf(one), (inAll.get(keyOf(one)) ?? 0) + 1)
  for (const one of walked) {
    const occurrence = seen.get(keyOf(one)) ?? 0
    seen.set(keyOf(one), occurrence + 1)
    standTask(day, stood, one, { occurrence, isLast: occurrence + 1 >= (inAll.get(keyOf(one)) ?? 1) })
  }
  return { tasks: stood.tasks.sort(byTime), parts: stood.parts }
}

const keyOf = ({ task, stepIndex }: WalkTask): string => `${task.green} ${stepIndex}`

/** What stands so far; `done` counts by green the steps that have been begun. */
type Stood = { readonly tasks: ScheduledTask[]; readonly parts: Part[]; readonly done: Map<number, number> }

/** Which of the tasks of its step one is: a plan that was replanned before may have several, all but the last broken off. */
type Turn = { readonly occurrence: number; readonly isLast: boolean }

const standTask = (day: Day, stood: Stood, one: WalkTask, turn: Turn): void => {
  const { task, stepIndex } = one
  const { moment } = day
  const ofStep = task.green === null || stepIndex < 0 ? [] : (moment.spells[task.green]?.[stepIndex] ?? [])
  const spells = turn.isLast
    ? ofStep.slice(turn.occurrence)
    : ofStep.slice(turn.occurrence, turn.occurrence + 1)
  const isBound = task.green !== null && stepIndex >= 0 && stepIndex <= (day.told[task.green] ?? -1)
  if (task.startMin >= moment.nowMin && spells.length === 0 && !isBound) return
  const laid =
    turn.isLast || spells.length > 0
      ? spellOf(day, one, spells[0], expectedStart(day, one))
      : { start: task.startMin, finish: task.finishMin, cut: true }
  const isTold = spells.length > 0 || isBound
  // A step before it has not been begun: then this one has not either, whatever the plan says.
  const waits = task.green !== null && stepIndex > (stood.done.get(task.green) ?? 0)
  if (laid.start >= moment.nowMin || (waits && !isTold)) {
    // Its machine and people wait for it rather than overtake it.
    if (laid.start < NEVER)
      passAt(day.walk, one, {
        ...laid,
        start: Math.max(laid.start, moment.nowMin),
        finish: Math.max(laid.finish, moment.nowMin),
      })
    return
  }
  const add = ({ start, finish, cut }: Told, doneShare: number | null): ScheduledTask => {
    const done = passAt(day.walk, one, { start, finish, cut })
    stood.tasks.push(done)
    if (task.green !== null && stepIndex >= 0)
      stood.done.set(task.green, Math.max(stood.done.get(task.green) ?? 0, stepIndex + (cut ? 0 : 1)))
    if (cut && stepIndex >= 0 && finish > start) stood.parts.push({ task: done, step: stepIndex, doneShare })
    return done
  }
  let last = add(laid, spells[0]?.doneShare ?? null)
  for (const spell of spells.slice(1))
    last = add(spellOf(day, one, spell, spell.startMin ?? last.finishMin), spell.doneShare)
}

/**
 * Where the work stands by a plan that was made at `now` itself: all that it has begun before then. Of several tasks of one step all but the last were broken off; the
 * last too where it was told stopped when it ends, or where its machine or one of its people goes out just then and it is shorter than the step takes.
 */
export const standingIn = (
  problem: Problem,
  tasks: readonly ScheduledTask[],
  moment: Moment,
  factor: FactorOf,
): Standing => {
  const begun = tasks.filter(({ startMin }) => startMin < moment.nowMin)
  const walked = walkTasks(problem, tasks)
  const ofStep = new Map<string, WalkTask[]>()
  for (const one of walked) ofStep.set(keyOf(one), [...(ofStep.get(keyOf(one)) ?? []), one])
  const parts = walked.flatMap((one): readonly Part[] => {
    const { task, stepIndex, step } = one
    if (task.startMin >= moment.nowMin || task.green === null || step === null) return []
    const same = ofStep.get(keyOf(one)) ?? []
    const occurrence = same.indexOf(one)
    const spell = moment.spells[task.green]?.[stepIndex]?.[occurrence]
    const stopped = spell?.end === 'stopped' && spell.endMin === task.finishMin
    const later = occurrence + 1 < same.length
    const id = problem.machines[task.machine ?? -1]?.id ?? ''
    const planned = step.minutesByMachine.get(id) ?? 0
    // What was over by now took the minutes planned; only what ran at now goes at today's pace.
    const pace =
      task.startMin + planned > moment.nowMin ? factor(task.green, stepIndex, task.machine ?? -1) : 1
    const whole = planned * pace
    const cut =
      spell?.end !== 'finished' &&
      task.finishMin - task.startMin < Math.round(whole) &&
      cutBy(moment, task, task.startMin, task.finishMin + 1) === task.finishMin
    return stopped || later || cut
      ? [{ task, step: stepIndex, doneShare: stopped ? spell.doneShare : null }]
      : []
  })
  return { tasks: begun, parts }
}

/** Whether a green has been opened by the tasks that stand. */
export const isOpened = (problem: Problem, standing: readonly ScheduledTask[], green: number): boolean => {
  const own = problem.greens[green]
  if (own === undefined) return false
  const done = standing.filter((task) => task.green === green && isWork(task)).length
  return done > chainMarks(own).open
}
