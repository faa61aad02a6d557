import { useState } from 'preact/hooks'
import { fromWantedUnit, inWantedUnit, quantityWords, unitMark } from '@swardwright/present'
import { PickOne } from '../../parts/PickOne.tsx'
import { units, useCourse } from '../../state/course.ts'
import { touch } from '../../state/undo.ts'
import { HowMuchLeft } from './HowMuchLeft.tsx'
import { SAND_NAMES, WORDS } from './words.ts'

type Sand = keyof typeof SAND_NAMES

const SANDS: readonly Sand[] = ['damp', 'kilnDried']

/** What is seen at a glance in a bay, in the club's unit of sand: one press each. */
const GLANCES = [0, 0.5, 1, 2, 5, 10] as const

/** As the journal takes it. */
const MOST_T = 2000

/** Sand is short: which, where the club has two, and how much of it is left, from which the day is worked out again. `after` ends the words of the way back. */
export const SandShort = (props: { readonly close: () => void; readonly after?: string }) => {
  const { stores } = useCourse()
  const kept = SANDS.filter((kind) => stores.some((store) => store.kind === kind))
  const choices = kept.length === 0 ? SANDS : kept
  const [picked, setPicked] = useState<Sand | null>(null)
  const sand = picked ?? (choices.length === 1 ? choices[0] : undefined)
  if (sand === undefined)
    return (
      <div class="stack">
        <p>{WORDS.whichSand}</p>
        <PickOne
          options={choices.map((id) => ({ id, name: SAND_NAMES[id] }))}
          onPick={(id) => setPicked(choices.find((one) => one === id) ?? null)}
        />
      </div>
    )
  const wanted = units.value
  return (
    <HowMuchLeft
      lead={`${SAND_NAMES[sand]}. ${WORDS.sandHere}`}
      unit={unitMark('sand', wanted)}
      glances={GLANCES}
      most={inWantedUnit('sand', MOST_T, wanted)}
      onLeft={(typed) => {
        props.close()
        const massT = Math.min(MOST_T, fromWantedUnit('sand', typed, wanted))
        const left = `${quantityWords('sand', massT, wanted)} ${WORDS.left}`
        void touch(
          'problemReported',
          { problem: 'sandShort', sand, massT },
          `${SAND_NAMES[sand]}: ${left}${props.after ?? ''}`,
        )
      }}
    />
  )
}
