import type { Plan } from '@swardwright/engine'
import { clock, clockFrom, dateAt, dayHeading } from '@swardwright/present'
import { greenName, useCourse } from '../../state/course.ts'
import { WORDS } from './words.ts'

type Day = Plan['days'][number]

const openedOn = (plan: Plan, date: string, timeZone: string) =>
  plan.openings
    .filter((opening) => dateAt(opening.opened, timeZone) === date)
    .toSorted((a, b) => Date.parse(a.opened) - Date.parse(b.opened))

/** One day in order, with its last safe start. */
export const DayOrder = ({ plan, day }: { readonly plan: Plan; readonly day: Day }) => {
  const { timeZone } = useCourse()
  const openings = openedOn(plan, day.date, timeZone)
  if (openings.length === 0) return null
  return (
    <section class="tight">
      <div class="row apart day-head">
        <h3>{dayHeading(day.date)}</h3>
        {day.lastSafeStart === null ? null : (
          <span class="small">
            {WORDS.lastSafeStart} <b>{clock(day.lastSafeStart, timeZone)}</b>
          </span>
        )}
      </div>
      <table class="order">
        <thead>
          <tr>
            <th scope="col">{WORDS.opened}</th>
            <th scope="col">green</th>
            <th scope="col" class="number">
              {WORDS.finished}
            </th>
          </tr>
        </thead>
        <tbody>
          {openings.map((opening) => (
            <tr key={opening.green}>
              <td>{clock(opening.opened, timeZone)}</td>
              <th scope="row">
                <a href={`/green/${encodeURIComponent(opening.green)}`}>{greenName(opening.green)}</a>
              </th>
              <td class="number">
                {opening.finished === null ? '–' : clockFrom(day.date, opening.finished, timeZone)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}

/** Which green when, day by day, with the last safe start of each day. */
export const OrderOfGreens = ({ plan }: { readonly plan: Plan }) => (
  <div class="wide">
    {plan.days.map((day) => (
      <DayOrder key={day.date} plan={plan} day={day} />
    ))}
  </div>
)
