import { Page } from '../../parts/Page.tsx'
import { WORDS } from './words.ts'

/** An address that leads nowhere. */
export const LostPage = () => (
  <Page title={WORDS.lost}>
    <p>{WORDS.lostLead}</p>
    <p>
      <a href="/">{WORDS.home}</a>
    </p>
  </Page>
)
