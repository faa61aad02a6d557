import { yearsOf } from '@swardwright/present'

/** Words of the page ‘Pick the week’. */
export const WORDS = {
  title: 'Pick the week',
  lead: 'The renovation worked from every first day in the weather of past years, then left to heal. You pick; press a figure to see where it comes from.',
  noPrescription: 'Nothing is prescribed yet, so there is no work to lay on the weeks.',
  toPrescription: 'Write the prescription',
  put: 'Put forward',
  soFar: 'Best so far:',
  reckoning: 'Reckoning the weeks',
  stop: 'Stop',
  stopped: 'Stopped:',
  stoppedLead: 'these are the weeks that were done.',
  again: 'Reckon again',
  old: 'Something has changed since:',
  oldLead: 'course, prescription, record or what you ask. The weeks below are for what it was.',
  fault: 'The program failed while reckoning. Nothing recorded is lost. It says:',
  none: 'No week can be reckoned:',
  drawn: 'These years are drawn, not those of your course.',
  drawnLead: 'They come from the means of a cool, moist, maritime place.',
  toHistory: 'Bring in your record',
  reserve: 'If it rains off:',
  noReserve: 'no later week reckoned is free',
  take: 'Take this week',
  takeLead: 'The plan is made from that day on; it stays a draft until you settle it.',
  all: 'All weeks',
  stripLead:
    'Height: years in which all is finished in time. Hatched: of those, years that meet a competition. Below: work, then the bracket in which the greens are good again. Press a week for its years.',
  table: 'In figures',
  how: 'What is asked, and how it is reckoned',
  from: 'First candidate',
  fromHint: 'Empty: the Monday after today',
  weeks: 'Weeks ahead',
  every: 'Days from one candidate to the next',
  everyHint: '7: one a week',
  days: 'Days of work wanted',
  years: 'Past years, at most',
  close: 'Close',
  yearByYear: 'Year by year',
  whereFrom: 'Where this comes from',
  left: 'No week can do these greens:',
  order:
    'Put forward in this order: most years finished in time without a clash, most years finished in time, soonest back, the earlier. No score is made of them.',
  yearsAt: (count: number, source: 'record' | 'drawn') =>
    `${count} ${count === 1 ? 'year' : 'years'} ${source === 'record' ? 'of your record' : 'drawn'}`,
  done: (done: number, of: number) => `${done} of ${of}`,
} as const

/** What a figure of a week can be about. */
export const ABOUT = ['finished', 'lost', 'back', 'clash', 'growth'] as const

/** One of them. */
export type About = (typeof ABOUT)[number]

/** Heading of each, in the table and in the panel. */
export const ABOUT_WORDS: Readonly<Record<About, string>> = {
  finished: 'Finished in time',
  lost: 'Lost to weather',
  back: 'Good again',
  clash: 'Clashes',
  growth: 'Growth left',
}

/** What each means, and what stands behind it. */
export const MEANING: Readonly<Record<About, readonly string[]>> = {
  finished: [
    'A plan of the whole work by your crew, machines, breaks and fixtures in the hours of each year, with seven days more to run over. In time: the last green finished by the last day wanted.',
    'The plan knows the hours of its year from the start, as if each forecast had been right, so the count errs on the good side. Sand and tines are taken to be ordered.',
    'A record by days does not say when in the day it rained; hours are drawn, the same each time.',
  ],
  lost: [
    'Days on which somebody is at work and greens are still to be opened, no competition holds them, and yet none can be opened: rain, wet, soft or frozen ground, or sand that would not dry by evening. A day cut short is not counted.',
    'The range leaves out one year in ten at either end.',
  ],
  back: [
    'From the finish of the last green, holes and grooves close as fast as that year’s warmth lets grass grow (recovery.closure in the catalogue), a third quicker for the first day, a third slower for the last.',
    'Our own fit to what courses and trials report, to be replaced by your own records. Over the years the bracket leaves out the earliest in ten and the latest in ten.',
  ],
  clash: [
    'A fixture that needs a worked green, from the first day of work until the day by which all greens should be back, the slow end of ‘good again’. Which fixtures there are stands on the page Fixtures.',
  ],
  growth: [
    'Growing days from the day by which all greens should be back until growth ends: each day counts by its growth potential (growth.potential in the catalogue), a day of 20 °C as one, a day of 10 °C as a fifth.',
    'Growth ends when the fortnight that follows grows less than a twentieth, some 6.5 °C (common practice, no source). None where it cannot be said when the greens are back.',
  ],
}

/** Figures of a column: '4 of 10'. */
export const countWords = (count: number, years: number): string => `${count} of ${years}`

/** '4 years of 10 without a clash'. */
export const clearWords = (count: number, years: number): string => `${yearsOf(count, years)} without a clash`
