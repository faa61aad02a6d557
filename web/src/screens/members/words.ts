import type { BodyOf } from '@swardwright/journal'

/** What the manager may set golfers on a green. */
export const PLAY_CHOICES: Readonly<Record<BodyOf<'playChanged'>['play'], string>> = {
  inPlay: 'as planned',
  onTemporary: 'temporary green',
  shut: 'closed',
}

/** Words of the page about the members’ page. */
export const WORDS = {
  title: 'Members’ page',
  lead: 'How the greens stand, for everybody who plays: no names of the crew, no stock, no risks.',
  address: 'Its address',
  closed: 'The page is closed: nobody outside sees it.',
  open: 'Open the page',
  openLead:
    'It gets an address that nobody can guess. Whoever has the address reads the page, on any phone, without an account.',
  isOpen: 'The page is open since',
  elsewhere:
    'Its address was made on another device, and the server keeps only a print of it. Take it from there, from the page itself (it prints its own code), or make a new one.',
  toPage: 'Look at it, and print it for the board',
  renew: 'New address',
  renewHint: 'The address before leads nowhere from then on.',
  close: 'Close the page',
  notice: 'A word to members',
  noticeHint: 'Stands at the top of the page with today’s date. Anybody with the address reads it.',
  putUp: 'Put it on the page',
  putUpDone: 'Word to members put on the page',
  takeOff: 'Take it off',
  draft: 'Only a plan that is settled stands here, and it is not yet:',
  toPlan: 'to the plan',
  play: 'What golfers play',
  playLead: 'Set a temporary green or close one. A green that is good before its time is set back here.',
  playChanged: 'now',
  shows: 'What members see',
} as const
