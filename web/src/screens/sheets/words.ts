/** Words of the page ‘Day sheets’. */
export const WORDS = {
  title: 'Day sheets',
  lead: 'One page a post, to print and to hand out.',
  none: 'No plan yet, so there is nothing to hand out.',
  toPlan: 'To the plan',
  day: 'Day',
  who: 'For whom',
  everybody: 'Everybody',
  print: 'Print',
  draft: 'From a draft that is not settled.',
} as const
