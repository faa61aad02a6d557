/** Words of the pages before there is a course, and of an address that leads nowhere. */
export const WORDS = {
  title: 'Swardwright',
  opening: 'Opening the notebook …',
  noCourse: 'There is no course here yet',
  noCourseLead:
    'Start from what you have. A number of greens and their total area give a first answer, marked rough; outlines, tests and paces make it finer later.',
  unreachable: 'The server does not answer',
  unreachableLead:
    'This device has nothing of the course yet, so there is nothing to show without it. Check the line, then try again.',
  again: 'Try again',
  lost: 'No such page',
  lostLead: 'This address leads nowhere.',
  home: 'To the page ‘Now’',
} as const
