import { clock, taskTodo } from '@swardwright/present'
import type { PlanTask } from '@swardwright/engine'
import { coveringOf } from '../../compute/covering.ts'
import { Dialog } from '../../parts/Dialog.tsx'
import { greenName, useCourse } from '../../state/course.ts'
import { stepTold } from '../../state/step-told.ts'
import { touch } from '../../state/undo.ts'
import { BrokenOff } from '../trouble/BrokenOff.tsx'
import { WORDS } from './words.ts'

const Step = ({ task }: { readonly task: PlanTask }) => {
  const { timeZone } = useCourse()
  const covering = coveringOf(task)
  if (covering === null) return null
  const { begun, stopped } = stepTold.value(task)
  const words = taskTodo(task)
  const begin = stopped ? WORDS.goOn : WORDS.start
  return (
    <li>
      <p>
        <b>{clock(task.start, timeZone)}</b> {words}
        {begun ? `, ${WORDS.begun}` : stopped ? `, ${WORDS.brokenOff}` : ''}
      </p>
      {begun ? (
        <div class="two">
          <button
            type="button"
            aria-label={`${WORDS.finish}: ${words}`}
            onClick={() => void touch('taskFinished', covering, `${words}: ${WORDS.finish}`)}
          >
            {WORDS.finish}
          </button>
          <Dialog button={WORDS.breakOff} title={`${WORDS.breakOff}: ${words}`}>
            {(close) => (
              <BrokenOff covering={covering} words={`${greenName(covering.green)}: ${words}`} close={close} />
            )}
          </Dialog>
        </div>
      ) : (
        <button
          type="button"
          class="whole"
          aria-label={`${begin}: ${words}`}
          onClick={() =>
            void touch(
              'taskStarted',
              { ...covering, ...(task.machine === null ? {} : { machine: task.machine }) },
              `${words}: ${WORDS.begun}`,
            )
          }
        >
          {begin}
        </button>
      )}
    </li>
  )
}

/** The finer ticks, for whoever wants them: start, end and breaking off of each step. One tap for the whole green is enough. */
export const Steps = ({ tasks }: { readonly tasks: readonly PlanTask[] }) => (
  <ul class="rows">
    {tasks.map((task) => (
      <Step key={task.id} task={task} />
    ))}
  </ul>
)
