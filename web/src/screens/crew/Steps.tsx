import { clock, taskTodo } from '@swardwright/present'
import type { PlanTask } from '@swardwright/engine'
import { useCourse } from '../../state/course.ts'
import { stepTold } from '../../state/step-told.ts'
import { touch } from '../../state/undo.ts'
import { WORDS } from './words.ts'

const coveringOf = (task: PlanTask) => ({
  pass: task.pass ?? undefined,
  load: task.load ?? undefined,
})

const Step = (props: { readonly task: PlanTask; readonly green: string }) => {
  const { task, green } = props
  const { timeZone } = useCourse()
  if (task.operation === 'move' || task.operation === 'load' || task.operation === 'setUp') return null
  const { operation } = task
  const { pass, load } = coveringOf(task)
  const about = {
    green,
    operation,
    ...(pass === undefined ? {} : { pass }),
    ...(load === undefined ? {} : { load }),
  }
  const { begun } = stepTold.value(task)
  const words = taskTodo(task)
  return (
    <li>
      <div class="line apart">
        <span>
          <b>{clock(task.start, timeZone)}</b> {words}
          {begun ? `, ${WORDS.begun}` : ''}
        </span>
        {begun ? (
          <button
            type="button"
            aria-label={`${WORDS.finish}: ${words}`}
            onClick={() => void touch('taskFinished', about, `${words}: ${WORDS.finish}`)}
          >
            {WORDS.finish}
          </button>
        ) : (
          <button
            type="button"
            aria-label={`${WORDS.start}: ${words}`}
            onClick={() =>
              void touch(
                'taskStarted',
                { ...about, ...(task.machine === null ? {} : { machine: task.machine }) },
                `${words}: ${WORDS.begun}`,
              )
            }
          >
            {WORDS.start}
          </button>
        )}
      </div>
    </li>
  )
}

/** The finer ticks, for whoever wants them: start and end of each step. One tap for the whole green is enough. */
export const Steps = (props: { readonly tasks: readonly PlanTask[]; readonly green: string }) => (
  <ul class="rows">
    {props.tasks.map((task) => (
      <Step key={task.id} task={task} green={props.green} />
    ))}
  </ul>
)
