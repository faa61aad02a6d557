import type { Plan } from '@swardwright/engine'
import { dayWords, listed, TASK_WORDS } from '@swardwright/present'
import { Fold } from '../../parts/Fold.tsx'
import { useCourse } from '../../state/course.ts'

const SERVES_MACHINES: readonly string[] = ['move', 'setUp']

const worked = (post: Plan['posts'][number]): string =>
  listed(
    post.operations
      .filter((operation) => !SERVES_MACHINES.includes(operation))
      .map((operation) => TASK_WORDS[operation].work),
  )

/** Who is at which post on one day. */
export const DayPosts = ({ plan, date }: { readonly plan: Plan; readonly date: string }) => {
  const { people } = useCourse()
  const nameOf = (id: string) => people.find((person) => person.id === id)?.name ?? id
  return (
    <table>
      <tbody>
        {plan.posts
          .filter((post) => post.date === date)
          .map((post) => (
            <tr key={post.person}>
              <th scope="row">{nameOf(post.person)}</th>
              <td>{worked(post)}</td>
            </tr>
          ))}
      </tbody>
    </table>
  )
}

/** Who is at which post, day by day; the first day stands open. */
export const Posts = ({ plan }: { readonly plan: Plan }) => {
  const dates = [...new Set(plan.posts.map((post) => post.date))].sort()
  return (
    <div>
      {dates.map((date, at) => (
        <Fold key={date} summary={dayWords(date)} open={at === 0}>
          {() => <DayPosts plan={plan} date={date} />}
        </Fold>
      ))}
    </div>
  )
}
