import type { Course, OneMore, PlanRisk, WhatIf } from '@swardwright/engine'
import { counted, decimal, shareWords } from './numbers.ts'
import { clock, dayAndClock, dayWords, durationWords } from './times.ts'

/** A chance as people say it: '5 %', 'under 1 %', 'over 99 %', 'none seen in 400 skies' stays with the caller. */
export const chanceWords = (chance: number): string => {
  if (chance > 0 && chance < 0.01) return 'under 1 %'
  if (chance < 1 && chance > 0.99) return 'over 99 %'
  return `${decimal(chance * 100, 0)} %`
}

type DayRisk = PlanRisk['days'][number]

/** Where the skies come from. */
export const riskSourceWords = (risk: PlanRisk): string =>
  risk.source === 'ensemble'
    ? `over the ${decimal(risk.draws, 0)} members of the forecast`
    : `over ${decimal(risk.draws, 0)} skies drawn round the forecast by its usual errors`

/** What keeps a day under the level that is over it: 'with none opened after 07:03 it stays under 5 %'. */
const remedyWords = ({ lastSafeStart }: DayRisk, { level }: PlanRisk, timeZone: string): string =>
  lastSafeStart === null
    ? `even the first one is over ${shareWords(level)}`
    : `with none opened after ${clock(lastSafeStart, timeZone)} it stays under ${shareWords(level)}`

/** One day in one sentence: 'Mon 10 Aug: 4 greens, a green is caught in 28 %; with none opened after 07:03 it stays under 5 %.' */
export const dayRiskSentence = (day: DayRisk, risk: PlanRisk, timeZone: string): string => {
  const greens = counted(day.planned, 'green', 'greens')
  const begin = `${dayWords(day.date)}: ${greens}; the chance that one is caught is ${chanceWords(day.chance)}`
  return day.chance <= risk.level ? begin : `${begin}; ${remedyWords(day, risk, timeZone)}`
}

/** The day at hand beside the level, where the decision is made: 'Chance of a caught green 31 %, over the level of 5 %; with none opened after 07:03 it stays under 5 %'. */
export const dayAgainstLevel = (day: DayRisk, risk: PlanRisk, timeZone: string): string => {
  const chance = `Chance of a caught green ${chanceWords(day.chance)}`
  const level = `the level of ${shareWords(risk.level)}`
  return day.chance <= risk.level
    ? `${chance}, within ${level}`
    : `${chance}, over ${level}; ${remedyWords(day, risk, timeZone)}`
}

const nameOf = (list: readonly { readonly id: string; readonly name: string }[], id: string): string =>
  list.find((one) => one.id === id)?.name ?? `'${id}'`

/** What is busiest: 'Busiest: Brush, 61 % of the time it could work; then ...'. The crew counts as a whole. */
export const busiestSentence = (risk: PlanRisk, course: Course): string => {
  const [first, second] = risk.uses.map(({ machine, busyMin, couldMin }) => {
    const name = machine === null ? 'the crew as a whole' : nameOf(course.machines, machine)
    return `${name} (${decimal((100 * busyMin) / Math.max(1, couldMin), 0)} % of the time it could work)`
  })
  if (first === undefined) return 'Nothing is worked'
  return `The bottleneck is ${first}${second === undefined ? '' : `; next comes ${second}`}`
}

/** The risk of a plan in lines of text. */
export const riskSummary = (risk: PlanRisk, course: Course): string =>
  [
    `Chance of a caught green, ${riskSourceWords(risk)}; the level is ${shareWords(risk.level)}`,
    ...risk.days.map((day) => `  ${dayRiskSentence(day, risk, course.timeZone)}`),
    busiestSentence(risk, course),
  ].join('\n')

/** What is changed: 'one more like Corer', 'one more person like ...' names no one: 'one more in the crew'. */
export const oneMoreWords = (change: OneMore, course: Course): string =>
  change.kind === 'machine'
    ? `one more machine like ${nameOf(course.machines, change.like)}`
    : `one more in the crew, trained like ${nameOf(course.people, change.like)}`

/** One week of several, side by side. */
export type WhatIfRow = {
  readonly week: string
  readonly finish: string
  readonly greens: string
  readonly overtime: string
}

/** The week as it is and with each change, for a table. */
export const whatIfRows = (list: readonly WhatIf[], course: Course): readonly WhatIfRow[] =>
  list.map(({ change, plan }) => {
    const { finish, unfinishedGreens, overtimeMin } = plan.objective
    return {
      week: change === null ? 'As it is' : `With ${oneMoreWords(change, course)}`,
      finish: finish === null ? 'nothing finished' : dayAndClock(finish, course.timeZone),
      greens: `${decimal(plan.openings.length, 0)} of ${decimal(plan.openings.length + unfinishedGreens, 0)}`,
      overtime: durationWords(overtimeMin),
    }
  })

/** The same, a line each. */
export const whatIfSummary = (list: readonly WhatIf[], course: Course): string =>
  whatIfRows(list, course)
    .map(
      ({ week, finish, greens, overtime }) =>
        `${week}: finished ${finish}, ${greens} greens, ${overtime} overtime`,
    )
    .join('\n')
