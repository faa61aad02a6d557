import type { Plan } from '@swardwright/engine'
import { clock, clockRange, comparePlans, dateAt, dayAndClock, dayWords, listed } from '@swardwright/present'
import { movedToAnotherDay, planChanges, type GreenChange } from '../../compute/plan-changes.ts'
import { showersOf, type Spell } from '../../compute/typed-rain.ts'
import { Part } from '../../parts/Page.tsx'
import { greenName, useCourse } from '../../state/course.ts'
import { draft, planBefore } from '../../state/plan.ts'
import { WORDS } from './words.ts'

/** Rain in words, joined where one hour follows the other: ‘Tue 11 Aug 14:00 to 21:00’. */
const rainWords = (spells: readonly Spell[], timeZone: string): string => {
  const showers = showersOf(spells)
  if (showers.length === 0) return WORDS.dry
  return listed(
    showers.map(
      ({ start, finish }) => `${dayWords(dateAt(start, timeZone))} ${clockRange(start, finish, timeZone)}`,
    ),
  )
}

const changeWords = (change: GreenChange, timeZone: string): string => {
  if (change.now === null) return 'left out, see below'
  if (change.was === null) return `taken in, ${dayAndClock(change.now, timeZone)}`
  const sameDay = dateAt(change.was, timeZone) === dateAt(change.now, timeZone)
  return sameDay
    ? `${clock(change.now, timeZone)}, was ${clock(change.was, timeZone)}`
    : `${dayAndClock(change.now, timeZone)}, was ${dayAndClock(change.was, timeZone)}`
}

const Rows = ({ changes }: { readonly changes: readonly GreenChange[] }) => {
  const { timeZone } = useCourse()
  return (
    <ul class="rows">
      {changes.map((change) => (
        <li key={change.green}>
          <div class="line">
            <span class="name">{greenName(change.green)}</span>
            <span>{changeWords(change, timeZone)}</span>
          </div>
        </li>
      ))}
    </ul>
  )
}

const JUDGED = {
  better: { word: 'better', colour: 'leaf' },
  worse: { word: 'worse', colour: 'rust' },
  same: { word: 'the same', colour: 'quiet' },
} as const

/** The two plans by what plans are judged by. */
const SideBySide = (props: { readonly before: Plan; readonly now: Plan }) => {
  const { timeZone } = useCourse()
  return (
    <details>
      <summary>{WORDS.sideBySide}</summary>
      <div class="scroll-x" tabIndex={0} role="region" aria-label={WORDS.sideBySide}>
        <table>
          <thead>
            <tr>
              <th scope="col" />
              <th scope="col">{WORDS.planWas}</th>
              <th scope="col">{WORDS.planNow}</th>
              <th scope="col" />
            </tr>
          </thead>
          <tbody>
            {comparePlans(props.before, props.now, timeZone).map(({ what, before, now, change }) => (
              <tr key={what}>
                <th scope="row">{what}</th>
                <td>{before}</td>
                <td>{now}</td>
                <td class={JUDGED[change].colour}>{JUDGED[change].word}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  )
}

/** What moved between the plan before and the draft, and what it comes from. */
export const Changes = () => {
  const { timeZone } = useCourse()
  const [before, after] = [planBefore.value, draft.value]
  if (before === null || after === null) return null
  const changes = planChanges(before.plan, after.plan)
  const days = new Set(movedToAnotherDay(changes))
  const [was, now] = [rainWords(before.rain, timeZone), rainWords(after.rain, timeZone)]
  return (
    <Part title={WORDS.changes} class="stack">
      <p>
        <b class="rain">{WORDS.rainNow}:</b> {now}.{was === now ? '' : ` ${WORDS.rainWas}: ${was}.`}
      </p>
      {changes.length === 0 ? <p>{WORDS.nothingMoved}</p> : null}
      <Rows changes={changes.filter((change) => days.has(change))} />
      {changes.length === days.size ? null : (
        <details>
          <summary>Moved within the day: {changes.length - days.size}</summary>
          <Rows changes={changes.filter((change) => !days.has(change))} />
        </details>
      )}
      <SideBySide before={before.plan} now={after.plan} />
    </Part>
  )
}
