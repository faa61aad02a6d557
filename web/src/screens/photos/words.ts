import type { BodyOf } from '@swardwright/journal'

/** What a photo is taken for. */
export type Purpose = BodyOf<'photoTaken'>['purpose']

/** Words about photos. */
export const WORDS = {
  photos: 'Photos',
  none: 'No photo yet. Three of one green, some days apart, show how it comes back.',
  take: 'Take a photo',
  pick: 'Add photos from this device',
  pickShort: 'From the gallery',
  of: 'It shows',
  purposes: {
    recovery: 'The surface',
    problem: 'A problem',
    profile: 'The profile',
    other: 'Something else',
  } satisfies Record<Purpose, string>,
  kept: 'kept on this device',
  making: 'Making it ready …',
  same: 'That photo is here already.',
  unreadable: 'This browser can’t read that picture. Choose a JPEG, PNG or WebP.',
  failed: 'The photo could not be kept. Try once more.',
  full: 'This device has no room left for the photo, so it is not kept yet. Make some room, then try again, or save it as a file.',
  fullWord: 'No room.',
  again: 'Try again',
  save: 'Save it as a file',
  notHere: 'No line: comes when there is one',
  notYet: 'Not sent yet by the phone that took it',
  waits: 'not sent yet',
  loading: 'Coming …',
  earlier: 'Earlier photo',
  later: 'Later photo',
  close: 'Close',
  note: 'Note',
  keepNote: 'Keep the note',
  takeOut: 'Take this photo out',
  takenOut: 'Photo taken out',
  ofProblem: 'Add a photo of it',
} as const

/** Words of the photos that wait, on the settings page. */
export const WAITING_WORDS = {
  title: 'Photos the server does not have yet',
  willGo: 'goes when there is a line',
  again: 'Try all of them again',
  save: 'Save as a file',
} as const
