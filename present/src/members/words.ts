import type { Operation, Prescription, PrescriptionGroup } from '@swardwright/engine'
import { counted, listed } from '../numbers.ts'
import { dateRange, dayWords } from '../times.ts'
import type { GreenState, MembersState } from './green-state.ts'

/** One word or two for each state, as members say it. */
export const MEMBERS_WORDS: Readonly<Record<MembersState | 'onTemporary' | 'shut', string>> = {
  open: 'In play',
  planned: 'In play',
  working: 'Closed for work today',
  putOff: 'In play',
  recovering: 'Recovering',
  onTemporary: 'Temporary green',
  shut: 'Closed',
}

/** A green as members call it: '7 Long Meadow'. */
export const calledGreen = ({ green }: Pick<GreenState, 'green'>): string =>
  green.hole === null ? green.name : `${green.hole} ${green.name}`

/** When a green is expected back, as a range; open to the late side where growth is too slow to tell. */
export const backWords = ({ back }: GreenState): string => {
  if (back === null) return ''
  if (back.to === null) return `back after ${dayWords(back.from)}, growth is slow`
  return `back ${dateRange(back.from, back.to)}`
}

const TOLD: Readonly<Record<MembersState, (state: GreenState, today: string) => string>> = {
  open: ({ finished }) => (finished === null ? '' : `renovated ${dayWords(finished)}`),
  planned: (state) =>
    `work on ${dayWords(state.workDay ?? '')}${state.back === null ? '' : `; ${backWords(state)}`}`,
  working: (state, today) =>
    state.workDay === null || state.workDay === today
      ? backWords(state)
      : `begun ${dayWords(state.workDay)}${state.back === null ? '' : `; ${backWords(state)}`}`,
  putOff: () => 'its work was put off; the new day will stand here',
  recovering: (state) => `finished ${dayWords(state.finished ?? '')}; ${backWords(state)}`,
}

/** What stands after the word of a green: its day of work, and when it is expected back. Empty where there is nothing to say. */
export const toldOf = (state: GreenState, today: string): string => TOLD[state.state](state, today)

/** The word for a green: what the manager set comes before what follows from the work. */
export const wordOf = ({ state, play, workDay }: GreenState, today: string): string => {
  if (play !== null) return MEMBERS_WORDS[play]
  return state === 'working' && workDay !== null && workDay !== today
    ? 'Closed for work'
    : MEMBERS_WORDS[state]
}

/** How the greens stand, counted, in one line: '2 greens closed for work, 3 recovering, 14 in play.' */
export const headline = (states: readonly GreenState[]): string => {
  const of = (wanted: (state: GreenState) => boolean): number => states.filter(wanted).length
  const temporary = of(({ play }) => play === 'onTemporary')
  const shut = of(({ play }) => play === 'shut')
  const working = of(({ state, play }) => play === null && state === 'working')
  const recovering = of(({ state, play }) => play === null && state === 'recovering')
  const open = states.length - temporary - shut - working - recovering
  if (open === states.length) return 'All greens are in play.'
  const parts = [
    [working, 'closed for work'],
    [shut, 'closed'],
    [temporary, 'on a temporary green'],
    [recovering, 'recovering'],
    [open, 'in play'],
  ] as const
  const [first, ...others] = parts.filter(([count]) => count > 0)
  if (first === undefined) return 'All greens are in play.'
  return `${listed([`${counted(first[0], 'green', 'greens')} ${first[1]}`, ...others.map(([count, word]) => `${count} ${word}`)])}.`
}

const does = (steps: PrescriptionGroup['chain'], ...operations: readonly Operation[]): boolean =>
  steps.some(({ operation }) => operations.includes(operation))

/** What is done, in one sentence, and why, in another. Common practice, no source. Null where the prescription does nothing of the kind. */
export const whatAndWhy = (
  prescription: Prescription,
): { readonly what: string; readonly why: string } | null => {
  const steps = prescription.groups.flatMap((group) => group.chain)
  const parts = [
    ...(does(steps, 'core') ? ['take small cores out of the greens'] : []),
    ...(does(steps, 'solidTine') ? ['make small holes in the greens'] : []),
    ...(does(steps, 'scarify') ? ['cut fine grooves through the thatch'] : []),
    ...(does(steps, 'dress') ? ['work sand in'] : []),
    ...(does(steps, 'seed') ? ['sow fresh seed'] : []),
  ]
  if (parts.length === 0) return null
  const what = `We ${listed(parts)}.`
  if (does(steps, 'core', 'scarify'))
    return {
      what,
      why: 'Old grass builds up under the surface and holds water like a sponge; with sand in its place the greens stay firm, drain after rain and keep healthy through the winter.',
    }
  return does(steps, 'solidTine')
    ? {
        what,
        why: 'The holes let air down to the roots and water away, so that the greens stay firm and healthy.',
      }
    : { what, why: 'A thin layer keeps the surface smooth, firm and dry.' }
}
