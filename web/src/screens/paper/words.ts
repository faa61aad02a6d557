/** Words of the page for paper sheets. */
export const WORDS = {
  title: 'Paper sheet',
  lead: 'Type in when each green was finished. What is left empty is not written down.',
  day: 'Day',
  nothing: 'No planned day has begun yet.',
  finished: 'finished at',
  isFinished: 'finished',
  note: 'note',
  noClock: 'A time from 00:00 to 23:59, such as 10:40',
  afterNow: 'That time is still to come',
  kept: 'written down.',
  keep: 'Write it down',
} as const
