/** Words of what goes wrong, the same for crew and manager. */
export const WORDS = {
  sandShort: 'Sand is short',
  whichSand: 'Which sand?',
  sandHere: 'How much of it lies in the bays?',
  sandNone: 'None',
  sandOther: 'Another figure',
  sandLeft: 'left',
  write: 'Write it down',
  whyBroken: 'Why is it broken off?',
  brokenOff: 'broken off',
} as const

/** Sands, as they are called on buttons. */
export const SAND_NAMES = { damp: 'Damp sand', kilnDried: 'Kiln-dried sand' } as const

/** Why a step is broken off, as the journal names it and as people do. */
export const BREAK_REASONS = [
  { id: 'rain', name: 'Rain' },
  { id: 'machine', name: 'The machine' },
  { id: 'person', name: 'Nobody there to do it' },
  { id: 'dark', name: 'It gets dark' },
  { id: 'other', name: 'Something else' },
] as const
