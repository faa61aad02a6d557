import type { StopFault } from '../../compute/paper-stops.ts'

/** Words of the page for paper sheets. */
export const WORDS = {
  title: 'Paper sheet',
  lead: 'Type in when each green was finished, and what was broken off. What is left empty is not written down.',
  day: 'Day',
  nothing: 'No planned day has begun yet.',
  finished: 'finished at',
  isFinished: 'finished',
  note: 'note',
  brokenOff: 'Broken off',
  isBrokenOff: 'broken off',
  step: 'Step',
  pickStep: 'Pick the step',
  brokenAt: 'Broken off at',
  why: 'Why',
  pickWhy: 'Pick why',
  inWords: 'In words',
  written: 'written down.',
  keep: 'Write it down',
} as const

/** What is wrong with a line, or still to come on it. */
export const FAULTS: Readonly<Record<StopFault, string>> = {
  noClock: 'A time from 00:00 to 23:59, such as 10:40',
  afterNow: 'That time is still to come',
  noStep: 'Pick the step that was broken off',
  noTime: 'Type when it was broken off, such as 10:40',
  afterFinished: 'The green was finished before that time',
  noWhy: 'Pick why it was broken off',
}
