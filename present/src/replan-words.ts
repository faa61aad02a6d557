import type {
  BailGreen,
  BailMode,
  BailOut,
  Because,
  CaughtGreen,
  Course,
  FactKind,
  FactProblem,
  PlanChange,
  Replanned,
  SituationError,
  StateAtRain,
} from '@swardwright/engine'
import { calculationErrorWords } from './calculation-words.ts'
import { counted, decimal, listed } from './numbers.ts'
import { TASK_WORDS } from './operation-words.ts'
import { pinRiskSentences, planNames } from './plan-words.ts'
import { clock, clockFrom, dateAt, dayAndClock, durationWords } from './times.ts'

/** Names behind ids, and the course's clock. */
type Names = {
  readonly timeZone: string
  readonly name: (id: string) => string
}

const namesOf = (course: Course): Names => {
  const names = new Map(
    [...course.greens, ...course.machines, ...course.people].map(({ id, name }) => [id, name] as const),
  )
  return { timeZone: course.timeZone, name: (id) => names.get(id) ?? `'${id}'` }
}

/** Longest list of accepted ids in a sentence. */
const MOST_LISTED = 12

const acceptedWords = (accepted: readonly string[]): string =>
  accepted.length === 0
    ? 'nothing'
    : accepted.length > MOST_LISTED
      ? `${accepted.slice(0, MOST_LISTED).join(', ')}, ...`
      : accepted.join(', ')

const PROBLEMS: Readonly<Record<FactProblem, (received: string, accepted: readonly string[]) => string>> = {
  unknown: (received, accepted) =>
    `is '${received}', which there is not; it can be ${acceptedWords(accepted)}`,
  afterNow: (received, [now]) =>
    `is ${received}, after now (${now ?? ''}); what has not happened yet is no fact`,
  endsBeforeStart: (received, [from]) => `is ${received}; it must be after ${from ?? ''}`,
  outsideDays: (received, accepted) =>
    `is '${received}', outside the days of the plan (${accepted.join(' to ')})`,
  missing: (_, accepted) => `is missing; give ${accepted.join(' or ')}`,
  tooMuch: (received, accepted) => `is '${received}'; give either ${accepted.join(' or ')}, not both`,
  inWork: (received) => `is '${received}', which is in work or done; it can't be left out any more`,
}

/** One clear sentence, without a full stop, for why no plan can be made again. */
export const situationErrorWords = (error: SituationError): string => {
  switch (error.type) {
    case 'badFact':
      return `facts[${error.index}] (${error.kind}): ${error.field} ${PROBLEMS[error.problem](error.received, error.accepted)}`
    case 'badNow':
      return `now is '${error.received}'; it must be a time such as 2026-08-10T10:30:00+01:00`
    case 'threshold':
      return `a weather threshold of the course: ${calculationErrorWords(error.error)}`
  }
}

const BECAUSE: Readonly<Record<Because['kind'], string>> = {
  started: 'of when work began',
  finished: 'of when work was finished',
  stopped: 'work was broken off',
  late: 'of the late start',
  machineOut: 'a machine is out',
  personOut: 'somebody is out',
  rain: 'of the rain',
  dry: 'the rain does not come',
  slower: 'the work goes at another pace',
  sandShort: 'of the sand that is left',
  tinesShort: 'of the tines that are left',
  deliveryLate: 'of the delivery',
  pinned: 'it is pinned',
  skipped: 'it is left out by hand',
  forecast: 'of the new forecast',
  running: 'of how the day has gone',
  follows: 'others have moved',
} satisfies Readonly<Record<FactKind | 'forecast' | 'running' | 'follows', string>>

const begun = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

const why = ({ kind }: Because): string => `because ${BECAUSE[kind]}`

/** One change as a sentence. */
export const changeSentence = (change: PlanChange, course: Course): string => {
  const { name, timeZone } = namesOf(course)
  const green = name(change.green)
  const at = (instant: string): string => dayAndClock(instant, timeZone)
  /** When it was to be: its day only where that is another. */
  const was = (from: string, to: string): string => clockFrom(dateAt(to, timeZone), from, timeZone)
  switch (change.kind) {
    case 'greenMoved':
      return `${green} is opened ${at(change.to)} instead of ${was(change.from, change.to)}, ${why(change.because)}.`
    case 'greenPutOff':
      return `${green} is put off to ${at(change.to)} from ${at(change.from)}, ${why(change.because)}.`
    case 'greenLeftOut':
      return `${green}, planned for ${at(change.from)}, is left out, ${why(change.because)}.`
    case 'greenTakenIn':
      return `${green} is taken in, ${at(change.to)}.`
    case 'finishMoved':
      return change.to === null
        ? `${green} can't be finished within the days planned (it was to be ${at(change.from)}), ${why(change.because)}.`
        : `${green} is finished ${at(change.to)} instead of ${was(change.from, change.to)}, ${why(change.because)}.`
    case 'machineChanged':
      return `${begun(TASK_WORDS[change.operation].work)} on ${green} ${at(change.at)} goes from ${change.from === null ? 'hand work' : name(change.from)} to ${change.to === null ? 'hand work' : name(change.to)}, ${why(change.because)}.`
    case 'peopleChanged':
      return `${begun(TASK_WORDS[change.operation].work)} on ${green} ${at(change.at)} goes from ${listed(change.from.map(name))} to ${listed(change.to.map(name))}, ${why(change.because)}.`
    case 'pinNotKept':
      return `The pin on ${green} (${at(change.wanted)}) can't be kept: ${change.got === null ? 'it finds no place' : `it comes ${at(change.got)}`}; kept, it would break a rule or leave a green open.`
  }
}

const STATES: Readonly<Record<StateAtRain, string>> = {
  opened: 'open, not cleared',
  cleared: 'cleared',
  dressed: 'dressed, not dragged in',
  finished: 'finished',
}

/** A green that could not be saved, as a sentence. */
export const caughtSentence = (caught: CaughtGreen, course: Course): string => {
  const { name, timeZone } = namesOf(course)
  const where = `${name(caught.green)} is caught${caught.at === null ? '' : ` ${dayAndClock(caught.at, timeZone)}`}, ${STATES[caught.state]}`
  switch (caught.reason) {
    case 'already':
      return `${where}: it was before this plan was made.`
    case 'tooLittleTime':
      return `${where}: with everybody and every machine on it, it would still be ${caught.byMin > 0 ? `${durationWords(caught.byMin)} ` : ''}too late.`
    case 'sandTooLate':
      return `${where}: the sand that it still needs comes too late.`
    case 'notAllTogether':
      return `${where}: each of the greens in work could be saved, but not all of them.`
    case 'cannotBeDone':
      return `${where}: a step of it can't be done any more within the days planned.`
  }
}

const more = (minutes: number, later: string, sooner: string): string =>
  minutes === 0 ? `no ${later}` : `${durationWords(Math.abs(minutes))} ${minutes > 0 ? later : sooner}`

/** What a plan made again costs, in one sentence; what it costs nothing of is not named. */
export const costSentence = (cost: Replanned['cost']): string => {
  const what = [
    ...(cost.tasksMoved === 0 ? [] : [`${counted(cost.tasksMoved, 'step goes', 'steps go')} to other hands`]),
    ...(cost.greensPutOff === 0 ? [] : [`${counted(cost.greensPutOff, 'green is', 'greens are')} put off`]),
    ...(cost.greensLeftOut <= 0 ? [] : [`${counted(cost.greensLeftOut, 'green is', 'greens are')} left out`]),
    `the last finish is ${more(cost.finishLaterMin, 'later', 'sooner')}`,
    ...(cost.moreOvertimeMin === 0 ? [] : [more(cost.moreOvertimeMin, 'more overtime', 'less overtime')]),
  ]
  return `${begun(what.join('; '))}.`
}

/** A plan made again as text to read: what it costs, what is caught, what has changed. */
export const replanSummary = (replanned: Replanned, course: Course): string => {
  const { changes, caught, cost, paces, unchanged } = replanned
  const { name, timeZone } = namesOf(course)
  // Who does what on later days is read from those days' sheets; today's changes must be told today.
  const isShown = (change: PlanChange): boolean =>
    (change.kind !== 'machineChanged' && change.kind !== 'peopleChanged') ||
    dateAt(change.at, timeZone) === dateAt(replanned.now, timeZone)
  const shown = changes.filter(isShown)
  const later = changes.length - shown.length
  return [
    changes.length === 0 ? 'Nothing changes.' : costSentence(cost),
    ...caught.map((one) => caughtSentence(one, course)),
    ...shown.map((change) => changeSentence(change, course)),
    ...pinRiskSentences(replanned.plan, planNames(course, replanned.plan)).map(
      (sentence) => `As pinned: ${sentence}`,
    ),
    ...(later === 0 ? [] : [`${counted(later, 'step', 'steps')} on later days go to other hands.`]),
    ...paces.map(
      (pace) =>
        `${name(pace.machine)}, ${TASK_WORDS[pace.operation].work}: ${decimal(pace.ratio, 2)} times the planned minutes (${decimal(pace.low, 2)} to ${decimal(pace.high, 2)}, from ${counted(pace.coverings, 'covering', 'coverings')}).`,
    ),
    ...(unchanged.length === 0 ? [] : [`As planned: ${listed(unchanged.map(name))}.`]),
  ].join('\n')
}

const MODES: Readonly<Record<BailMode, string>> = {
  finishAll: 'finish',
  finishShort: 'finish short',
  clearOnly: 'clear only',
  leave: 'leave',
}

/** What is done with a green before the rain, in one to four words. Clearing that the rain will cut short is not told as clearing. */
export const bailWord = ({ mode, stateAtRain }: BailGreen): string =>
  mode === 'clearOnly' && stateAtRain === 'opened' ? 'clear what you can' : MODES[mode]

/** The bail-out as text to read aloud: each green, then each person. */
export const bailOutSummary = (plan: BailOut, course: Course): string => {
  const { name, timeZone } = namesOf(course)
  const step = (one: { readonly operation: keyof typeof TASK_WORDS; readonly pass: number }): string =>
    `${TASK_WORDS[one.operation].work}${one.pass > 1 ? ` (${one.pass})` : ''}`
  return [
    `Rain at ${clock(plan.rainAt, timeZone)}: ${counted(plan.caught, 'green is', 'greens are')} caught (${counted(plan.caughtIfPlanGoesOn, 'green', 'greens')} if the plan simply goes on).`,
    ...plan.greens.map(
      (one) =>
        `${name(one.green)}: ${bailWord(one)}; in the rain ${STATES[one.stateAtRain]}.${one.mode === 'finishShort' ? ` Without ${listed(one.notDone.map(step))}.` : ''}`,
    ),
    ...(plan.dontOpen.length === 0 ? [] : [`Do not open ${listed(plan.dontOpen.map(name))}.`]),
    ...plan.people.map(
      ({ person, tasks }) =>
        `${name(person)}: ${tasks.map((task) => `${clock(task.start, timeZone)} ${step(task)} ${name(task.green)}`).join(', ')}.`,
    ),
  ].join('\n')
}
