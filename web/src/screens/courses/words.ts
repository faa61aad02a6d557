/** Words of the page about courses. */
export const WORDS = {
  title: 'Courses',
  lead: 'Each course has a diary of its own. This device remembers which one is open.',
  open: 'open now',
  here: 'on this device, opens without a line',
  notHere: 'needs a line the first time',
  turn: 'Turn to',
  offline: 'The list is as the server told it last.',
  another: 'Another course',
  anotherLead:
    'It begins empty, to be brought in from a file or a list, or as a copy of the demo to try things out.',
  name: 'Name of the course',
  from: 'Begins',
  fromOptions: { nothing: 'empty', demo: 'as the demo' },
  make: 'Make the course',
  missed: 'The link names a course that this device does not see. Ask for a link of your own.',
  understood: 'Understood',
  others: 'Courses here',
} as const
