/** Words of what goes wrong, the same for crew and manager. */
export const WORDS = {
  whichSand: 'Which sand?',
  sandHere: 'How much of it lies in the bays?',
  whichTines: 'Which tines?',
  setsHere: 'How many sets are left? A half-worn one counts half.',
  sets: 'sets',
  none: 'None',
  otherFigure: 'Another figure',
  left: 'left',
  write: 'Write it down',
  whyBroken: 'Why is it broken off?',
  brokenOff: 'broken off',
} as const

/** Sands, as they are called on buttons. */
export const SAND_NAMES = { damp: 'Damp sand', kilnDried: 'Kiln-dried sand' } as const
