/** Words of the page ‘Course’ and of bringing a course in. */
export const WORDS = {
  title: 'Course',
  map: 'The course from above',
  mapHint: 'To scale. Press a green to open it.',
  list: 'Greens',
  inOut: 'Bring in or take out',
  file: 'Course file (GeoJSON), or a map (KML, OpenStreetMap)',
  fileHint:
    'A course file holds machines, people and stores too. From a map come greens, tees, bunkers, water and tracks; all else is taken as usual and told.',
  csv: 'Or a list of greens with their areas',
  csvHint: 'One green a line: name, area. For example: 1 Gatepost, 480',
  count: 'Or only a number of greens and their total area',
  countGreens: 'Greens',
  countArea: 'Total area',
  rough: 'A first answer from this is marked rough.',
  use: 'Use it',
  replace:
    'Bringing a course in replaces greens, machines, people and stores. What was recorded before stays in the journal.',
  export: 'Take the course out as a file',
  broughtIn: 'Brought in.',
  assumed: 'Taken for granted because nobody said:',
  reading: 'Reading …',
  noServer: 'the server does not answer, and a new course needs it once',
} as const
