import {
  chooseWeeks,
  type Course,
  type RankedWeek,
  type WeekOutlook,
  type Weeks,
  type WeeksError,
} from '@swardwright/engine'
import { counted, decimal, listed, yearsOf } from './numbers.ts'
import { planErrorWords } from './plan-error-words.ts'
import { planNames, unplannedSentence } from './plan-words.ts'
import { dateRange, dayWords, weekday } from './times.ts'

/** How sure it is that the work is done in time: 'Finished by Thursday in 6 years of 10'. */
export const finishedWords = ({ lastDay, finishedYears, years }: WeekOutlook): string =>
  `Finished by ${weekday(lastDay)} in ${yearsOf(finishedYears, years.length)}`

/** The days between which the greens are good again: '5 to 14 Sept', from the day that one year in ten betters to the day that one year in ten is later than. */
export const backDates = ({ backFrom, backBy }: WeekOutlook): string => {
  if (backFrom.low === null) return 'too late to tell'
  return backBy.high === null
    ? `from ${dateRange(backFrom.low, backFrom.low)} on`
    : dateRange(backFrom.low, backBy.high)
}

/** The same in a sentence: 'good again 5 to 14 Sept'. */
export const backWords = (week: WeekOutlook): string => {
  if (week.backFrom.low === null) return 'too late to tell when good again'
  return `good again ${backDates(week)}${week.backBy.high === null ? ', in bad years too late to tell' : ''}`
}

const fixtureOf = (course: Course, id: string): string => {
  const fixture = course.fixtures.find((one) => one.id === id)
  return fixture === undefined ? id : `${fixture.name} on ${dayWords(fixture.date)}`
}

/** Which competitions are met, and in how many years: 'Tarn Cup on Sat 15 Aug: in the work in 6 years of 10, before the greens are back in 4 years of 10'. */
export const clashWords = ({ clashes, years }: WeekOutlook, course: Course): readonly string[] =>
  clashes.map(({ fixture, workYears, healingYears }) => {
    const parts = [
      ...(workYears > 0 ? [`in the work in ${yearsOf(workYears, years.length)}`] : []),
      ...(healingYears > 0 ? [`before the greens are back in ${yearsOf(healingYears, years.length)}`] : []),
    ]
    return `${fixtureOf(course, fixture)}: ${parts.join(', ')}`
  })

/** The competitions that a week meets, two by name: 'none', 'Tarn Cup, Open fourball and 1 more'. */
export const clashNames = ({ clashes }: WeekOutlook, course: Course): string => {
  const name = (id: string): string => course.fixtures.find((one) => one.id === id)?.name ?? id
  const named = clashes.slice(0, 2).map(({ fixture }) => name(fixture))
  if (named.length === 0) return 'none'
  return listed(clashes.length > 2 ? [...named, `${clashes.length - 2} more`] : named)
}

/** The same in a sentence: 'no clash', 'clash with Tarn Cup'. */
export const clashInShort = (week: WeekOutlook, course: Course): string =>
  week.clashes.length === 0 ? 'no clash' : `clash with ${clashNames(week, course)}`

/** One candidate in one sentence: 'Finished by Thursday in 6 years of 10; good again 5 to 14 Sept; no clash.' */
export const weekSentence = (week: WeekOutlook, course: Course): string =>
  `${finishedWords(week)}; ${backWords(week)}; ${clashInShort(week, course)}.`

const between = (low: string, high: string): string => (low === high ? low : `${low} to ${high}`)

/** Days lost to weather over the years: '0 to 2 days'. */
export const daysLostWords = ({ daysLost }: WeekOutlook): string =>
  `${between(decimal(daysLost.low ?? 0, 0), decimal(daysLost.high ?? 0, 0))} ${daysLost.high === 1 ? 'day' : 'days'}`

/** Growth left once the greens are back: '6 to 13 growing days'. */
export const growthWords = ({ growingDaysLeft: { low, high } }: WeekOutlook): string => {
  const [least, most] = [decimal(low ?? 0, 0), decimal(high ?? 0, 0)]
  return `${between(least, most)} growing ${most === '1' ? 'day' : 'days'}`
}

const rankedLine = ({ week, reserve }: RankedWeek, course: Course): string =>
  `${dayWords(week.firstDay)}: ${weekSentence(week, course)} Reserve: ${reserve === null ? 'none in the days asked' : dayWords(reserve)}.`

/** All candidates in lines of text: three put forward, then each by date with its parts. */
export const weeksSummary = (weeks: Weeks, course: Course): string => {
  const { picks } = chooseWeeks(weeks.weeks)
  const [first, last] = [weeks.years[0], weeks.years.at(-1)]
  const behind =
    weeks.source === 'record'
      ? `${counted(weeks.years.length, 'year', 'years')} of the record, ${first ?? ''} to ${last ?? ''}`
      : `${counted(weeks.years.length, 'year', 'years')} drawn from normals, not a record of the course`
  return [
    `${course.name}: ${counted(weeks.days, 'day', 'days')} of work wanted; ${behind}`,
    '',
    ...picks.map((pick) => rankedLine(pick, course)),
    '',
    ...weeks.weeks.flatMap((week) => [
      `${dayWords(week.firstDay)}  finished ${week.finishedYears}, without a clash ${week.clearYears} of ${week.years.length}; lost to weather ${daysLostWords(week)}; ${backWords(week)}; growth left ${growthWords(week)}`,
      ...clashWords(week, course).map((words) => `    ${words}`),
    ]),
    ...weeks.excluded.map((entry) => unplannedSentence(entry, planNames(course, { tasks: [] }))),
  ].join('\n')
}

/** One clear sentence, without a full stop, for why no week can be reckoned. */
export const weeksErrorWords = (error: WeeksError): string => {
  switch (error.type) {
    case 'badFirstDays':
      return `there are ${error.received} first days to choose from; it must be ${error.min} to ${error.max}`
    case 'tooLongPeriod':
      return `the first days lie within ${error.receivedDays} days; it must be at most ${error.maxDays} days`
    case 'noWholeYear':
      return `no year of the record, ${error.recordFrom} to ${error.recordTo}, has rain and both temperatures on every day from ${dateRange(error.from, error.from)} to ${dateRange(error.to, error.to)} and most temperatures of the half-year after`
    default:
      return planErrorWords(error)
  }
}
