import { mayRecord } from '../state/access.ts'

/** A page that can be turned to. */
export type PageLink = { readonly href: string; readonly word: string }

/** The pages of everyday work, in the order of the job; along the foot on a phone. */
export const MAIN_PAGES: readonly PageLink[] = [
  { href: '/', word: 'Now' },
  { href: '/course', word: 'Course' },
  { href: '/prescription', word: 'Prescription' },
  { href: '/plan', word: 'Plan' },
]

/** The rest, behind ‘More’ on a phone and in the margin on a desk. */
const MORE_PAGES: readonly PageLink[] = [
  { href: '/crew', word: 'My post' },
  { href: '/weeks', word: 'Pick the week' },
  { href: '/weather', word: 'Weather' },
  { href: '/sheets', word: 'Day sheets' },
  { href: '/stores', word: 'Stores' },
  { href: '/fixtures', word: 'Fixtures' },
  { href: '/people', word: 'People' },
  { href: '/machines', word: 'Machines' },
  { href: '/members', word: 'Members’ page' },
  { href: '/account', word: 'Who may come in' },
  { href: '/courses', word: 'Courses' },
  { href: '/settings', word: 'Settings and units' },
]

/** The pages of the margin that concern this device: whoever only reads has no post. */
export const morePages = (): readonly PageLink[] =>
  mayRecord.value ? MORE_PAGES : MORE_PAGES.filter(({ href }) => href !== '/crew')

/** True when a page, or one below it, is open. */
export const isOpen = (href: string, path: string): boolean =>
  href === '/' ? path === '/' : path === href || path.startsWith(`${href}/`)
