import { Choice, TextField } from '../../parts/fields.tsx'
import { Page, Part } from '../../parts/Page.tsx'
import { setTheme, theme } from '../../shell/theme.ts'
import { mayRecord } from '../../state/access.ts'
import { author, authorIsTied, setAuthor } from '../../state/author.ts'
import { refused } from '../../state/journal.ts'
import { photosWaiting } from '../../state/photos.ts'
import { WAITING_WORDS } from '../photos/words.ts'
import { Attention } from './Attention.tsx'
import { ClubFacts } from './ClubFacts.tsx'
import { ThisDevice } from './ThisDevice.tsx'
import { WaitingPhotos } from './WaitingPhotos.tsx'
import { UnitChoices } from './UnitChoices.tsx'
import { WorkRules } from './WorkRules.tsx'
import { WORDS } from './words.ts'
import { Deciding } from '../../parts/Deciding.tsx'

const THEMES = ['device', 'day', 'night'] as const

/** The club’s own choices, units, and how this device shows them. */
export const SettingsPage = () => (
  <Page title={WORDS.title}>
    {refused.value.length === 0 ? null : (
      <Part title={WORDS.attention}>
        <Attention />
      </Part>
    )}
    {photosWaiting.value.length === 0 ? null : (
      <div id="photos">
        <Part title={WAITING_WORDS.title}>
          <WaitingPhotos />
        </Part>
      </div>
    )}
    <div class="columns">
      <div class="wide">
        <Choice
          label={WORDS.light}
          value={theme.value}
          options={THEMES.map((value) => ({ value, label: WORDS.lightOptions[value] }))}
          onValue={setTheme}
        />
        {authorIsTied.value || !mayRecord.value ? null : (
          <TextField label={WORDS.you} hint={WORDS.youHint} value={author.value} onValue={setAuthor} />
        )}
        <Part title={WORDS.device}>
          <ThisDevice />
        </Part>
        <Part title={WORDS.units}>
          <Deciding>
            <UnitChoices />
          </Deciding>
        </Part>
      </div>
      <div class="wide">
        <Part title={WORDS.club}>
          <Deciding>
            <ClubFacts />
          </Deciding>
        </Part>
        <Part title={WORDS.rules}>
          <Deciding>
            <WorkRules />
          </Deciding>
        </Part>
      </div>
    </div>
  </Page>
)
