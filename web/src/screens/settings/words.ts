import type { RefusalReason } from '@swardwright/journal'
import type { QuantityKind } from '@swardwright/present'

/** Words of the page ‘Settings and units’. */
export const WORDS = {
  title: 'Settings and units',
  attention: 'Needs attention: kept here, but the server would not take it',
  light: 'Light of this screen',
  lightOptions: { device: 'As the device', day: 'Day', night: 'Night' },
  club: 'The club',
  name: 'Name of the club',
  timeZone: 'Time zone',
  timeZoneWrong: 'Time zone: a name such as Europe/London',
  now: 'The club’s clock',
  nowReal: 'The real time',
  nowFixed: 'Held at a moment, to try things out',
  nowAt: 'Moment',
  rules: 'Rules of the work',
  dark: 'Dark from',
  darkHint: 'Empty: sunset',
  night: 'A cleared or dressed green may stand a dry night',
  units: 'Units',
  unitsLead: 'Each quantity in the unit the club reads. What is stored does not change.',
  device: 'This device',
  you: 'Your name',
  youHint: 'Stands beside what you record from this device',
} as const

/** What this device keeps, in sentences. */
export const DEVICE_WORDS = {
  app: {
    'not yet': 'The app is being kept on this device.',
    kept: 'The app is kept on this device and opens without a line.',
  },
  appNever: 'This browser does not keep the app: it opens only while the server answers.',
  lasting: {
    lasting: 'The browser has promised to keep what is recorded here until somebody removes it.',
    'while there is room':
      'The browser may clear what is recorded here when the device runs short of room. Putting the app on the home screen helps.',
    unknown:
      'The browser has not promised yet to keep what is recorded here. It is asked at the first entry.',
  },
  keepsNothing:
    'This browser keeps nothing: what is recorded lasts only while the page is open, or once it is sent.',
  ask: 'Ask the browser to keep it',
} as const

/** What each quantity is called. */
export const QUANTITY_WORDS: Readonly<Record<QuantityKind, string>> = {
  tine: 'Tines and spacing',
  depth: 'Depth',
  sand: 'Sand',
  area: 'Area',
  distance: 'Distance',
  temperature: 'Temperature',
  rain: 'Rain',
}

/** What the units are called on their buttons. */
export const UNIT_WORDS = {
  mm: 'mm',
  in: 'inches',
  t: 'tonnes',
  shortTon: 'short tons (US)',
  m2: 'm²',
  ft2: 'ft²',
  m: 'metres',
  yd: 'yards',
  C: '°C',
  F: '°F',
} as const

/** The settings that are plain figures, with a shorter word where the schema’s is long. */
export const RULE_FIGURES = [
  ['rainStopMmPerH', 'An hour counts as rain from'],
  ['openGreensCap', 'Greens open at one time, at most'],
  ['firstGreenCheckMin', 'Check of the first green, min'],
  ['packUpMin', 'Bringing in and washing down, min'],
  ['deepFromMm', 'Work counts as deep from'],
  ['detourFactor', 'Way driven per metre of straight line'],
  ['personTravelMPerS', 'Pace of a person between greens'],
] as const

/** Why the server would not take what was recorded, for people. */
export const ATTENTION_WORDS: Readonly<Record<RefusalReason, string>> = {
  'too-old':
    'This app is too old for the server. Open it again where there is a line, take the new version, then record this again.',
  'not-allowed': 'Whoever uses this device may not record that. Ask the manager.',
  'bad-body': 'The server cannot read it. Record it again.',
  'too-large': 'It is too large to send. Record it in parts.',
  clock: 'The clock of this device is more than a day off. Set it, then record this again.',
}
