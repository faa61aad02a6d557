import { useState } from 'preact/hooks'
import { setsWords, tineName } from '@swardwright/present'
import { PickOne } from '../../parts/PickOne.tsx'
import { units, useCourse } from '../../state/course.ts'
import { touch } from '../../state/undo.ts'
import { HowMuchLeft } from './HowMuchLeft.tsx'
import { WORDS } from './words.ts'

/** What is left at a glance, sets: one press each. A half-worn set counts half. */
const GLANCES = [0, 0.5, 1, 1.5, 2, 3] as const

/** As the journal takes it. */
const MOST_SETS = 200

/** Tines are short: which kind, where the club counts several, and how many sets of it are left, from which the day is worked out again. `after` ends the words of the way back. */
export const TinesShort = (props: { readonly close: () => void; readonly after?: string }) => {
  const { tineSets = [] } = useCourse()
  // Entries of one kind count together: the first of them stands for all.
  const kinds = [...new Map(tineSets.toReversed().map((one) => [tineName(one, units.value), one.id]))]
    .map(([name, id]) => ({ id, name }))
    .toReversed()
  const [picked, setPicked] = useState<string | null>(null)
  const kind = kinds.length === 1 ? kinds[0] : kinds.find(({ id }) => id === picked)
  if (kind === undefined)
    return (
      <div class="stack">
        <p>{WORDS.whichTines}</p>
        <PickOne options={kinds} onPick={setPicked} />
      </div>
    )
  return (
    <HowMuchLeft
      lead={`${kind.name}. ${WORDS.setsHere}`}
      unit={WORDS.sets}
      glances={GLANCES}
      most={MOST_SETS}
      onLeft={(sets) => {
        props.close()
        void touch(
          'problemReported',
          { problem: 'tinesShort', store: kind.id, sets },
          `${kind.name}: ${setsWords(sets)} ${WORDS.left}${props.after ?? ''}`,
        )
      }}
    />
  )
}
