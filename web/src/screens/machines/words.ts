/** Words of the page ‘Machines’. */
export const WORDS = {
  title: 'Machines',
  lead: 'What stands in the shed, and the paces that plans count with. Put in your own figures: a stop-watch over one green is enough.',
  none: 'No machine yet. A plan needs at least what the chain names: a corer, a dresser, a drag mat.',
  add: 'Add a machine',
  remove: 'Take this machine out',
  again: 'Add another like it',
  name: 'Name',
  kind: 'Kind',
  spinner: 'Throws sand with spinners (wind matters)',
  outOn: 'Out of work on',
  typical: 'New machines start from common practice, no source; change them to what yours does.',
} as const
