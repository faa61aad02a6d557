import { groupOf, isOperation, type Plan, type PlanTask } from '@swardwright/engine'
import {
  clock,
  decimal,
  listed,
  quantityWords,
  settingLines,
  TASK_WORDS,
  taskTodo,
} from '@swardwright/present'
import { coveringOf } from '../../compute/covering.ts'
import type { CrewStay } from '../../compute/crew-view.ts'
import { Fold } from '../../parts/Fold.tsx'
import { later } from '../../parts/later.tsx'
import { greenName, units, useCourse } from '../../state/course.ts'
import { touch } from '../../state/undo.ts'
import { RunsHere } from './RunsHere.tsx'
import { Steps } from './Steps.tsx'
import { WORDS } from './words.ts'

const KG_PER_T = 1000

/** What is done on a stay, in words; dresser loads are counted. */
export const stayWords = (stay: CrewStay): string => {
  const loads = stay.tasks.filter(({ operation }) => operation === 'dress').length
  const words = stay.tasks.map((task) =>
    task.operation === 'dress' && loads > 1 ? `dress, ${loads} loads` : taskTodo(task),
  )
  return listed([...new Set(words)])
}

/** The settings for the work in hand: depth, spacing, sand and its rate. */
const Settings = (props: { readonly plan: Plan; readonly stay: CrewStay }) => {
  const { plan, stay } = props
  const { greens } = useCourse()
  const group = groupOf(plan.prescription, stay.green)
  if (group === undefined) return null
  const operations = new Set<string>(stay.tasks.map(({ operation }) => operation))
  const sand = operations.has('dress') ? plan.sand.find(({ green }) => green === stay.green) : undefined
  const areaM2 = greens.find(({ id }) => id === stay.green)?.areaM2
  const lines = [
    ...settingLines(group, operations, units.value),
    ...(sand === undefined
      ? []
      : [
          `${quantityWords('sand', sand.likelyT, units.value)} in ${sand.loads} ${sand.loads === 1 ? 'load' : 'loads'}${areaM2 === undefined ? '' : `, ${decimal((sand.likelyT * KG_PER_T) / areaM2, 1)} kg/m²`}`,
        ]),
  ]
  if (lines.length === 0) return null
  return (
    <section class="tight" aria-label={WORDS.settings}>
      <h2>{WORDS.settings}</h2>
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </section>
  )
}

const PhotosOfGreen = later(async () => (await import('../photos/PhotosOfGreen.tsx')).PhotosOfGreen)

/** Photos of the green, behind one press; a new one names the step in hand. */
const Photos = ({ stay }: { readonly stay: CrewStay }) => {
  const operation = stay.tasks.map((task) => task.operation).find(isOperation)
  return (
    <PhotosOfGreen
      key={stay.green}
      green={stay.green}
      hasUndo
      {...(operation === undefined ? {} : { operation })}
    />
  )
}

/** The stay in hand: where, what, with which machine, how it is set. */
export const Stay = (props: { readonly plan: Plan; readonly stay: CrewStay }) => {
  const { plan, stay } = props
  const { machines, timeZone } = useCourse()
  const first = stay.tasks[0]
  const last = stay.tasks.at(-1)
  if (first === undefined || last === undefined) return null
  const used = [...new Set(stay.tasks.flatMap(({ machine }) => machine ?? []))]
  return (
    <div class="stack">
      <div class="next">
        <p>
          {clock(first.start, timeZone)} to {clock(last.finish, timeZone)}
        </p>
        <p class="strike">{greenName(stay.green)}</p>
        <p class="upshot">{stayWords(stay)}</p>
        <p>
          {used.length === 0
            ? WORDS.byHand
            : listed(used.map((id) => machines.find((one) => one.id === id)?.name ?? id))}
        </p>
      </div>
      <Settings plan={plan} stay={stay} />
      <div>
        {first.machine === null ? null : <RunsHere plan={plan} task={first} green={stay.green} />}
        <Fold summary={WORDS.steps}>{() => <Steps tasks={stay.tasks} />}</Fold>
        <Fold summary={WORDS.photos}>{() => <Photos stay={stay} />}</Fold>
      </div>
    </div>
  )
}

/** The last step that a plan has on a green: after it the green is finished. */
const lastOn = (plan: Plan, green: string): PlanTask | undefined =>
  plan.tasks
    .filter((task) => task.green === green && task.operation !== 'move' && task.operation !== 'load')
    .toSorted((a, b) => Date.parse(a.finish) - Date.parse(b.finish))
    .at(-1)

/** The one big tap: the green is finished where this stay ends its chain, else this stay’s work on it is done. */
export const BigTap = (props: { readonly plan: Plan; readonly stay: CrewStay }) => {
  const { plan, stay } = props
  const { green } = stay
  const last = stay.tasks.at(-1)
  const covering = last === undefined ? null : coveringOf(last)
  if (last === undefined || covering === null) return null
  const isWhole = lastOn(plan, green)?.id === last.id
  const words = `${greenName(green)} ${isWhole ? WORDS.done : TASK_WORDS[last.operation].done}`
  return (
    <button
      type="button"
      class="primary"
      onClick={() =>
        void (isWhole ? touch('greenFinished', { green }, words) : touch('taskFinished', covering, words))
      }
    >
      {words}
    </button>
  )
}
