import { localOf, type Plan, type PlanTask } from '@swardwright/engine'
import { dateAt, listed, TASK_WORDS } from '@swardwright/present'
import { PARTS_OF_DAY } from '../../compute/day-view.ts'
import { useCourse } from '../../state/course.ts'

const SERVES_MACHINES: readonly string[] = ['move', 'setUp', 'load']

/** Part of the day in which a task begins. */
const partOf = (task: PlanTask, timeZone: string): number =>
  PARTS_OF_DAY.findIndex((part) => localOf(Date.parse(task.start), timeZone).minuteOfDay < part.toMin)

/** The posts as a table: person by morning, midday, afternoon. */
export const PostsByPart = ({ plan, date }: { readonly plan: Plan; readonly date: string }) => {
  const { people, timeZone } = useCourse()
  const tasks = plan.tasks.filter(
    (task) => dateAt(task.start, timeZone) === date && !SERVES_MACHINES.includes(task.operation),
  )
  const doing = (person: string, part: number): string =>
    listed([
      ...new Set(
        tasks
          .filter((task) => task.people.includes(person) && partOf(task, timeZone) === part)
          .map((task) => TASK_WORDS[task.operation].todo),
      ),
    ])
  return (
    <table class="posts">
      <thead>
        <tr>
          <td />
          {PARTS_OF_DAY.map((part) => (
            <th scope="col" key={part.word}>
              {part.word}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {people.map((person) => (
          <tr key={person.id}>
            <th scope="row">{person.name}</th>
            {PARTS_OF_DAY.map((part, at) => (
              <td key={part.word}>{doing(person.id, at) || '–'}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  )
}
