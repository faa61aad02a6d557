import { Page } from '../../parts/Page.tsx'
import { WORDS } from './words.ts'

/** Stands where an address names a green that the course does not have. */
export const LostGreen = () => (
  <Page title={WORDS.lost}>
    <p>{WORDS.lostLead}</p>
    <a href="/course">{WORDS.back}</a>
  </Page>
)
