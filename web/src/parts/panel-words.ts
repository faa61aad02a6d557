import { counted } from '@swardwright/present'

/** Words of the panel ‘Where does this number come from?’. */
export const PANEL_WORDS = {
  title: 'Where does this number come from?',
  close: 'Close',
  open: 'open',
  result: 'What came out',
  inputs: 'What went in',
  evidence: {
    'measured trial': 'How sure: from measured trials',
    handbook: 'How sure: a handbook’s rule',
    'common practice': 'How sure: common practice, no trial behind it',
    'our assumption': 'How sure: our own assumption',
  },
  check: 'Checked against',
  checkClass: {
    published: 'Seen in print',
    derived: 'Worked by hand from the stated inputs',
    memory: 'From memory',
  },
  moreChecks: (count: number) => `${counted(count, 'more row is', 'more rows are')} checked on every build.`,
  byHand: (name: string) => `In the catalogue: ${name}`,
} as const
