import { describe, expect, it } from 'vitest'
import { smallProblem } from './check/small-course.ts'
import { smallTasks } from './check/small-plan.ts'
import { tasksOfPlan } from './plan-to-tasks.ts'
import { whyHere } from './why-here.ts'

/* Why each task of the plan made by hand (`check/small-plan.ts`) starts when it does stands beside the tasks there. */
const problem = smallProblem()
const tasks = tasksOfPlan(problem, { tasks: [...smallTasks()] })
const [A, B] = [0, 1]

const indexOf = (kind: string, green: number, load: number | null = null): number =>
  tasks.findIndex((task) => task.kind === kind && task.green === green && task.load === load)

const why = (kind: string, green: number, load: number | null = null) =>
  whyHere(problem, tasks, indexOf(kind, green, load))

describe('why a task is where it is', () => {
  it('starts the first green when the shift, the set-up and the way allow it', () => {
    // Ann: shift from 480, 15 to set up, 6 to drive: 501.
    expect(why('core', A)).toMatchObject({
      spareMin: 0,
      reasons: [
        { hold: 'shift', earliestMin: 501 },
        { hold: 'hours', earliestMin: 335 },
      ],
    })
  })

  it('holds the second green until the first has been looked over', () => {
    // Cored by 531 and 20 to check; the corer itself could be there at 531 + 3.
    const { reasons, spareMin } = why('core', B)
    expect(spareMin).toBe(0)
    expect(reasons[0]).toEqual({ hold: 'firstGreenCheck', earliestMin: 551, task: indexOf('core', A) })
    expect(reasons).toContainEqual({ hold: 'machineBusy', earliestMin: 534, task: indexOf('core', A) })
  })

  it('follows the step before, and the sand that must dry', () => {
    expect(why('collect', A).reasons[0]).toMatchObject({ hold: 'stepBefore', earliestMin: 531 })
    // 0.5 mm at 0.3 mm an hour: 100 minutes after 589.
    expect(why('dragIn', A).reasons[0]).toMatchObject({ hold: 'drying', earliestMin: 689 })
  })

  it('looks through the filling and the ways of a dresser to the load before', () => {
    // Dressed by 561; 5 to the bay, 8 to fill, 5 back: 579.
    expect(why('dress', A, 2).reasons[0]).toMatchObject({
      hold: 'machineBusy',
      earliestMin: 579,
      task: indexOf('dress', A, 1),
    })
  })

  it('says when nothing holds a task back', () => {
    const later = tasks.map((task, index) =>
      index === indexOf('roll', B)
        ? { ...task, startMin: task.startMin + 7, finishMin: task.finishMin + 7 }
        : task,
    )
    const told = whyHere(problem, later, indexOf('roll', B))
    expect(told.spareMin).toBe(7)
    expect(told.reasons[0]?.hold).toBe('nothing')
    expect(told.reasons[1]).toMatchObject({ hold: 'wait', earliestMin: 751 })
  })
})
