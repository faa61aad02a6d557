import { render } from 'preact'
import { App } from './app.tsx'
import { restoreTheme } from './shell/theme.ts'
import { keepApp } from './state/app-version.ts'
import { restoreAuthor } from './state/author.ts'
import { restoreTyped } from './state/carry-typed.ts'
import { startClock } from './state/clock.ts'
import { keepDraft } from './state/kept-draft.ts'
import { followFacts } from './state/follow.ts'
import { openJournal } from './state/open.ts'
import { adoptTokens } from './style/tokens.ts'
import './style/base.css'
import './style/controls.css'
import './style/layout.css'
import './style/pieces.css'
import './style/pages.css'
import './style/print.css'

adoptTokens()
restoreTheme()
restoreAuthor()
startClock()
restoreTyped()
render(<App />, document.getElementById('app') ?? document.body)
keepDraft()
followFacts()
// What the opening page needs goes first over a poor line; the rest of the app is kept after it.
void openJournal().finally(keepApp)
