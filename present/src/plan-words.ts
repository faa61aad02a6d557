import type { Course, Plan, PlanTask, Rule, TaskKind, UnitsWanted, Violation } from '@swardwright/engine'
import { counted, decimal, listed } from './numbers.ts'
import { TASK_WORDS } from './operation-words.ts'
import { clock, dateAt, dayWords, durationWords } from './times.ts'
import { setsWords } from './tine-words.ts'
import { quantityWords } from './units.ts'

/** Names behind the ids of a plan, and how this club reads times and masses. */
export type PlanNames = {
  readonly timeZone: string
  readonly units: UnitsWanted
  readonly greens: ReadonlyMap<string, string>
  readonly machines: ReadonlyMap<string, string>
  readonly people: ReadonlyMap<string, string>
  readonly tasks: ReadonlyMap<string, PlanTask>
}

const namesOf = (
  list: readonly { readonly id: string; readonly name: string }[],
): ReadonlyMap<string, string> => new Map(list.map(({ id, name }) => [id, name]))

/** The names that a plan's sentences need. */
export const planNames = (course: Course, plan: Pick<Plan, 'tasks'>): PlanNames => ({
  timeZone: course.timeZone,
  units: course.units,
  greens: namesOf(course.greens),
  machines: namesOf(course.machines),
  people: namesOf(course.people),
  tasks: new Map(plan.tasks.map((task) => [task.id, task])),
})

/** A name, or the id itself in quotes where the course has none. */
const nameIn = (names: ReadonlyMap<string, string>, id: string | null): string =>
  id === null ? 'no green' : (names.get(id) ?? `'${id}'`)

const machineWords = (task: PlanTask, n: PlanNames): string =>
  task.machine === null ? 'a machine' : nameIn(n.machines, task.machine)

/** A task in a few words: 'coring 7 Long Meadow', 'moving Corer to 7 Long Meadow', 'setting up Corer'. */
const taskWords = (task: PlanTask, n: PlanNames): string => {
  const { work } = TASK_WORDS[task.operation]
  const green = nameIn(n.greens, task.green)
  if (task.operation === 'setUp') return `${work} ${machineWords(task, n)}`
  if (task.operation === 'load') return task.green === null ? work : `${work} for ${green}`
  if (task.operation === 'move') {
    return `${work} ${machineWords(task, n)}${task.green === null ? '' : ` to ${green}`}`
  }
  return `${work} ${green}`
}

const tasksOf = (violation: Violation, n: PlanNames): readonly PlanTask[] =>
  violation.tasks.flatMap((id) => n.tasks.get(id) ?? [])

const work = (violation: Violation, n: PlanNames, index = -1): string => {
  const task = tasksOf(violation, n).at(index)
  return task === undefined ? 'a task' : taskWords(task, n)
}

const begun = (text: string): string => text.charAt(0).toLocaleUpperCase('en-GB') + text.slice(1)

const green = (violation: Violation, n: PlanNames): string => nameIn(n.greens, violation.green)

const machine = (violation: Violation, n: PlanNames): string => {
  const task = tasksOf(violation, n).at(-1)
  return task === undefined ? 'A machine' : begun(machineWords(task, n))
}

/** ' on Mon 10 Aug at 15:00', or nothing where the rule has no moment. */
const when = ({ at }: Violation, n: PlanNames): string =>
  at === null ? '' : ` on ${dayWords(dateAt(at, n.timeZone))} at ${clock(at, n.timeZone)}`

const long = ({ by }: Violation): string => durationWords(Math.ceil(by))

const sand = ({ by }: Violation, n: PlanNames): string => quantityWords('sand', by, n.units)

/** The people who are on all the tasks concerned; who of several it is, the rule does not say. */
const people = (violation: Violation, n: PlanNames): string => {
  const [first, ...rest] = tasksOf(violation, n)
  const shared = first?.people.filter((id) => rest.every((task) => task.people.includes(id))) ?? []
  return shared.length === 0 ? 'Somebody' : shared.map((id) => nameIn(n.people, id)).join(' or ')
}

const unknownNames = (violation: Violation, n: PlanNames): string => {
  const [task] = tasksOf(violation, n)
  if (task === undefined) return `green '${violation.green}'`
  const unknown = [
    ...(task.green === null || n.greens.has(task.green) ? [] : [`green '${task.green}'`]),
    ...(task.machine === null || n.machines.has(task.machine) ? [] : [`machine '${task.machine}'`]),
    ...task.people.filter((id) => !n.people.has(id)).map((id) => `person '${id}'`),
  ]
  return unknown.length === 0 ? 'something' : listed(unknown)
}

const SENTENCES: Readonly<Record<Rule, (v: Violation, n: PlanNames) => string>> = {
  unknownId: (v, n) => `The plan names ${unknownNames(v, n)}, which the course does not have.`,
  badTime: (v, n) =>
    v.at === null
      ? `${begun(work(v, n))} has a time that cannot be read.`
      : `${begun(work(v, n))}${when(v, n)} ends before it starts or lies outside the days of the plan, by ${long(v)}.`,
  machineTwice: (v, n) =>
    `${machine(v, n)} is on two tasks at once${when(v, n)}: ${work(v, n, 0)} and ${work(v, n)} share ${long(v)}.`,
  personTwice: (v, n) =>
    `${people(v, n)} is on two tasks at once${when(v, n)}: ${work(v, n, 0)} and ${work(v, n)} share ${long(v)}.`,
  wrongMachine: (v, n) => `${begun(work(v, n))}${when(v, n)} has a machine that cannot do it, or none.`,
  machineOut: (v, n) => `${machine(v, n)} is not available${when(v, n)} for ${long(v)} of ${work(v, n)}.`,
  noSkill: (v, n) =>
    `${begun(work(v, n))}${when(v, n)} has ${counted(v.by, 'person', 'people')} without the skill for it.`,
  crewShort: (v, n) => `${begun(work(v, n))}${when(v, n)} is ${counted(v.by, 'person', 'people')} short.`,
  missingOperation: (v, n) => `${green(v, n)} lacks an operation of its chain.`,
  extraOperation: (v, n) => `${begun(work(v, n))}${when(v, n)} is asked for by no step, or is done already.`,
  outOfOrder: (v, n) =>
    `${begun(work(v, n))} starts${when(v, n)}, ${long(v)} before ${work(v, n, 0)} has finished.`,
  taskTooShort: (v, n) => `${begun(work(v, n))}${when(v, n)} is ${long(v)} shorter than it takes.`,
  lagTooShort: (v, n) =>
    `${begun(work(v, n))} starts${when(v, n)}, ${long(v)} too soon after ${work(v, n, 0)}.`,
  sameDay: (v, n) => `${green(v, n)} is opened on one day and still in work ${long(v)} into the next.`,
  noSetUp: (v, n) =>
    `${machine(v, n)} goes to work${when(v, n)} without its ${long(v)} of setting up that day.`,
  noMove: (v, n) =>
    `${machine(v, n)} stands elsewhere${when(v, n)}: no move takes it to ${work(v, n)}, ${long(v)} away.`,
  noTravel: (v, n) => `${people(v, n)} lacks ${long(v)} for the way to ${work(v, n)}${when(v, n)}.`,
  noRefill: (v, n) =>
    `${machine(v, n)} lacks ${sand(v, n)} of sand for ${work(v, n)}${when(v, n)}: no load brings it.`,
  hopperOverfull: (v, n) => `${machine(v, n)} is loaded with ${sand(v, n)} more than it holds${when(v, n)}.`,
  stockGone: (v, n) => `The bay lacks ${sand(v, n)} for ${work(v, n)}${when(v, n)}.`,
  tinesGone: (v, n) =>
    `There are no sharp tines left for ${work(v, n)}${when(v, n)}: ${setsWords(v.by)} missing by then.`,
  outsideShift: (v, n) =>
    `${begun(work(v, n))} runs ${long(v)} outside a shift${when(v, n)} (${people(v, n)}).`,
  breakMissed: (v, n) =>
    `${people(v, n)} has a break cut short by ${long(v)}, in the window that begins${when(v, n)}.`,
  notWorkable: (v, n) =>
    `${begun(work(v, n))} falls in ${long(v)} in which weather or light does not allow it, first${when(v, n)}.`,
  openInRain: (v, n) => `${green(v, n)} stands open in rain${when(v, n)} for ${long(v)}.`,
  openOvernight: (v, n) => `${green(v, n)} stands open after dark${when(v, n)} for ${long(v)}.`,
  draggedBeforeDry: (v, n) => `${begun(work(v, n))} starts${when(v, n)}, ${long(v)} before the sand is dry.`,
  tooManyOpen: (v, n) =>
    `With ${green(v, n)}, opened${when(v, n)}, ${counted(v.by, 'green', 'greens')} more than allowed are in work at once.`,
  firstGreenUnchecked: (v, n) =>
    `${green(v, n)} is opened${when(v, n)}, ${long(v)} too early: a green that is not weak comes first and is checked before the next.`,
  servicesNotLocated: (v, n) =>
    `${green(v, n)} is worked${when(v, n)} with services under it that nobody has located; do not tine it.`,
  notAccountedFor: (v, n) =>
    v.tasks.length > 0
      ? `${green(v, n)} is planned and listed as left out as well.`
      : `${green(v, n)} is neither planned nor listed once as left out.`,
  pinMoved: (v, n) => `${green(v, n)} is opened${when(v, n)}, ${long(v)} from where it is pinned.`,
  againstRecord: (v, n) =>
    v.tasks.length === 0
      ? `${green(v, n)} has a step recorded${when(v, n)} that the plan does not have.`
      : `${begun(work(v, n))} stands otherwise than it was recorded${when(v, n)}, by ${long(v)}.`,
  figureWrong: (v, n) =>
    v.green === null
      ? `A figure that the plan states is off by ${decimal(v.by, 3)}: its tasks say otherwise${when(v, n)}.`
      : `A figure that the plan states for ${green(v, n)} is off by ${decimal(v.by, 3)}: its tasks say otherwise${when(v, n)}.`,
}

/** One broken rule as one sentence for people. */
export const violationSentence = (violation: Violation, names: PlanNames): string =>
  SENTENCES[violation.rule](violation, names)

/** What the manager's pins risk, as sentences, for one green or all: rules that no plan with these pins could keep. */
export const pinRiskSentences = (
  plan: Pick<Plan, 'pinRisks'>,
  names: PlanNames,
  onGreen?: string,
): readonly string[] => [
  ...new Set(
    (plan.pinRisks ?? [])
      .filter((one) => onGreen === undefined || one.green === onGreen)
      .map((one) => violationSentence(one, names)),
  ),
]

type Unplanned = Plan['unplanned'][number]
type Facts = Unplanned['facts']

const numberIn = (facts: Facts, key: string): number | null => {
  const value = facts[key]
  return typeof value === 'number' && Number.isFinite(value) ? value : null
}

const isTaskKind = (value: unknown): value is TaskKind =>
  typeof value === 'string' && Object.hasOwn(TASK_WORDS, value)

/** The work that a reason names: 'coring'; 'a step of its chain' where it names none. */
const workIn = (facts: Facts): string =>
  isTaskKind(facts['operation']) ? TASK_WORDS[facts['operation']].work : 'a step of its chain'

const windowWords = (facts: Facts): string => {
  const [needMin, longestMin] = [numberIn(facts, 'needMin'), numberIn(facts, 'longestWindowMin')]
  return needMin === null || longestMin === null
    ? ''
    : ` (at least ${durationWords(needMin)} of work; the longest dry window is ${durationWords(longestMin)})`
}

const sandWords = (facts: Facts, n: PlanNames): string => {
  const [needT, availableT] = [numberIn(facts, 'needT'), numberIn(facts, 'availableT')]
  return needT === null || availableT === null
    ? ''
    : ` (it takes ${quantityWords('sand', needT, n.units)}; ${quantityWords('sand', availableT, n.units)} can be had)`
}

const tineWords = (facts: Facts): string => {
  const [need, available] = [numberIn(facts, 'needSets'), numberIn(facts, 'availableSets')]
  return need === null || available === null
    ? ''
    : ` (it wears out ${setsWords(need)}; ${setsWords(available)} can be had for it)`
}

const trainedWords = (facts: Facts): string => {
  const [trained, needed] = [numberIn(facts, 'trained'), numberIn(facts, 'needed')]
  return trained === null || needed === null
    ? ''
    : ` (${decimal(needed, 0)} needed, ${decimal(trained, 0)} trained)`
}

const depthWords = (facts: Facts, n: PlanNames): string => {
  const [depthMm, deepFromMm] = [numberIn(facts, 'depthMm'), numberIn(facts, 'deepFromMm')]
  return depthMm === null || deepFromMm === null
    ? ''
    : ` (tined ${quantityWords('depth', depthMm, n.units)} deep; services count from ${quantityWords('depth', deepFromMm, n.units)})`
}

const REASONS: Readonly<Record<Unplanned['reason'], (facts: Facts, n: PlanNames) => string>> = {
  noMachine: (facts) => `is left out: no machine for ${workIn(facts)}.`,
  noSkill: (facts) => `is left out: too few people are trained for ${workIn(facts)}${trainedWords(facts)}.`,
  noWindow: (facts) =>
    `is left out: no stretch of dry, light, workable hours is long enough to open and finish it${windowWords(facts)}.`,
  noTimeLeft: (facts) =>
    `is left out: it would fit alone, but not beside the greens that are planned${windowWords(facts)}.`,
  sandShort: (facts, n) => `is left out: there is not enough sand${sandWords(facts, n)}.`,
  tinesShort: (facts) => `is left out: there are not enough tines${tineWords(facts)}.`,
  servicesNotLocated: (facts, n) => `is left out: locate the services under it first${depthWords(facts, n)}.`,
  notPrescribed: () => `is left out: the prescription does not name it.`,
  skipped: (facts) =>
    typeof facts['why'] === 'string'
      ? `is left out: taken out by hand (${facts['why']}).`
      : 'is left out: taken out by hand.',
}

/** Why a green is not in the plan, as one sentence: '7 Long Meadow is left out: there is not enough sand (...)'. */
export const unplannedSentence = (unplanned: Unplanned, names: PlanNames): string =>
  `${nameIn(names.greens, unplanned.green)} ${REASONS[unplanned.reason](unplanned.facts, names)}`
