import { useEffect } from 'preact/hooks'
import { Fold } from '../../parts/Fold.tsx'
import { compute } from '../../state/compute.ts'
import { greenName, useCourse } from '../../state/course.ts'
import { lastHeadings, runsTold } from '../../state/runs.ts'
import type { Plan, PlanTask } from '@swardwright/engine'
import { RunsDrawing } from '../runs/RunsDrawing.tsx'
import { WORDS } from './words.ts'

const Drawing = (props: { readonly plan: Plan; readonly task: PlanTask; readonly green: string }) => {
  const course = useCourse()
  const { plan, task, green } = props
  const told = runsTold.value.value
  const key = told?.choices.find(
    (choice) => choice.operation === task.operation && choice.machine.id === task.machine,
  )?.key
  useEffect(() => {
    runsTold.ask(() =>
      compute('runs', {
        course,
        prescription: plan.prescription,
        green,
        key: key ?? null,
        headingDeg: null,
        turnDeg: null,
        lastDeg: lastHeadings(green),
      }),
    )
  }, [course, plan, green, key])
  useEffect(() => () => runsTold.clear(), [green])
  if (told === null) return null
  const pass = Math.min((task.pass ?? 1) - 1, told.told.length - 1)
  return (
    <div class="stack">
      <RunsDrawing
        name={greenName(green)}
        told={told}
        twelveDeg={course.greens.find(({ id }) => id === green)?.playDeg ?? 0}
        pass={pass}
        onPass={() => undefined}
      />
      <a class="button" href={`/green/${encodeURIComponent(green)}/runs`}>
        {WORDS.runsMore}
      </a>
    </div>
  )
}

/** The runs of the step in hand over this green, behind one press so that the big button stays in sight. */
export const RunsHere = (props: { readonly plan: Plan; readonly task: PlanTask; readonly green: string }) => (
  <Fold summary={WORDS.runs}>{() => <Drawing {...props} />}</Fold>
)
