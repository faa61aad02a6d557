import type { Green } from '@swardwright/engine'
import { PLAYS } from '@swardwright/journal'
import { Select } from '../../parts/fields.tsx'
import { Fold } from '../../parts/Fold.tsx'
import { greenCalled, greensInOrder } from '../../state/course.ts'
import { facts } from '../../state/journal.ts'
import { touch } from '../../state/undo.ts'
import { PLAY_CHOICES, WORDS } from './words.ts'

const OPTIONS = PLAYS.map((value) => ({ value, label: PLAY_CHOICES[value] }))

const PlayOf = ({ green }: { readonly green: Green }) => {
  const last = facts.value.playChanges.findLast(({ value }) => value.green === green.id)
  return (
    <Select
      label={greenCalled(green)}
      value={last?.value.play ?? 'inPlay'}
      options={OPTIONS}
      onValue={(play) =>
        void touch(
          'playChanged',
          { green: green.id, play },
          `${greenCalled(green)} ${WORDS.playChanged}: ${PLAY_CHOICES[play]}`,
        )
      }
    />
  )
}

/** What golfers play on each green, where the manager says something else than the work does. */
export const Play = () => (
  <Fold summary={WORDS.play}>
    {() => (
      <div class="stack">
        <p class="small quiet">{WORDS.playLead}</p>
        <div class="fields">
          {greensInOrder.value.map((green) => (
            <PlayOf key={green.id} green={green} />
          ))}
        </div>
      </div>
    )}
  </Fold>
)
