import {
  bailWord,
  clock,
  counted,
  listed,
  planErrorWords,
  situationErrorWords,
  taskTodo,
} from '@swardwright/present'
import type { BailOut, BailTask } from '@swardwright/engine'
import { Dialog } from '../../parts/Dialog.tsx'
import { greenName, useCourse } from '../../state/course.ts'
import { askBailOut, bail } from '../../state/day.ts'
import { IN_RAIN, WORDS } from './words.ts'

const MINUTES = [20, 40, 60] as const

const Told = ({ told }: { readonly told: BailOut }) => {
  const { people, timeZone } = useCourse()
  const todo = (task: BailTask): string =>
    `${clock(task.start, timeZone)} ${taskTodo(task)} ${greenName(task.green)}`
  return (
    <div class="stack">
      <p class="upshot">
        Rain at <b>{clock(told.rainAt, timeZone)}</b>.{' '}
        {told.caught === 0 ? WORDS.noneCaught : `${counted(told.caught, 'green is', 'greens are')} caught.`}
      </p>
      {told.greens.length === 0 ? <p class="upshot">{WORDS.noneOpen}</p> : null}
      <ul class="bail">
        {told.greens.map((green) => (
          <li key={green.green}>
            <p class="name">{greenName(green.green)}</p>
            <p class={`strike ${green.stateAtRain === 'finished' ? 'leaf' : 'rust'}`}>
              {bailWord(green).toUpperCase()}
            </p>
            <p>
              {green.over === null ? '' : `over by ${clock(green.over, timeZone)}; `}
              {IN_RAIN[green.stateAtRain]}
              {green.mode === 'finishShort'
                ? `; without ${listed(green.notDone.map((step) => taskTodo(step)))}`
                : ''}
            </p>
          </li>
        ))}
      </ul>
      {told.dontOpen.length === 0 ? null : (
        <p class="upshot">
          <b class="rust">{WORDS.dontOpen}</b> {listed(told.dontOpen.map(greenName))}
        </p>
      )}
      <ul class="bail">
        {told.people.map(({ person, tasks }) => (
          <li key={person}>
            <p class="name">{people.find(({ id }) => id === person)?.name ?? person}</p>
            <ol>
              {tasks.map((task) => (
                <li key={`${task.start} ${task.operation}`}>{todo(task)}</li>
              ))}
            </ol>
          </li>
        ))}
      </ul>
    </div>
  )
}

const Answer = () => {
  const answer = bail.value.value
  if (bail.pending.value) return <p>{WORDS.working}</p>
  if (bail.fault.value !== null) return <p class="wrong">{bail.fault.value}</p>
  if (answer === null) return null
  if (answer.ok) return <Told told={answer.value} />
  const { error } = answer
  const isFact = error.type === 'badFact' || error.type === 'badNow' || error.type === 'threshold'
  return <p class="wrong">{isFact ? situationErrorWords(error) : planErrorWords(error)}</p>
}

/** Rain in so many minutes: who finishes, clears or leaves what, in large words. */
export const BailOutDialog = () => (
  <Dialog button={WORDS.bailOut} title={WORDS.bailTitle}>
    {() => (
      <div class="stack">
        <div class="three">
          {MINUTES.map((minutes) => (
            <button key={minutes} type="button" onClick={() => askBailOut(minutes)}>
              {minutes} min
            </button>
          ))}
        </div>
        <div role="status">
          <Answer />
        </div>
      </div>
    )}
  </Dialog>
)
