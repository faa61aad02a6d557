import type { Course, Plan } from '@swardwright/engine'
import { courseMap, dateAt, groundFromCourse } from '@swardwright/present'
import { useLocation } from 'preact-iso'
import { DrawingView } from '../../parts/DrawingView.tsx'
import { turnTo } from '../../shell/turning.ts'
import { isWide } from '../../shell/wide.ts'

const WIDTH_PX = { wide: 620, narrow: 360 } as const

/** Greens of one day of a plan in the order they are opened. */
const walkOf = (plan: Plan, date: string, timeZone: string): readonly string[] =>
  plan.openings
    .filter((opening) => dateAt(opening.opened, timeZone) === date)
    .toSorted((a, b) => Date.parse(a.opened) - Date.parse(b.opened))
    .map((opening) => opening.green)

/** The course from above, to scale and without any network; pressing a green opens its page. With a plan and a day, the day’s walk is drawn. */
export const CourseMap = (props: {
  readonly course: Course
  readonly walk?: Plan
  readonly date?: string
}) => {
  const { course, walk, date } = props
  const { route } = useLocation()
  const drawing = courseMap({
    ground: groundFromCourse(course),
    labels: walk === undefined && isWide.value ? 'names' : 'numbers',
    units: course.units,
    widthPx: isWide.value ? WIDTH_PX.wide : WIDTH_PX.narrow,
    scope: 'map',
    ...(walk === undefined || date === undefined ? {} : { walk: walkOf(walk, date, course.timeZone) }),
  })
  return (
    <DrawingView
      drawing={drawing}
      touchable={['green']}
      onTouch={({ part, id }) => part === 'green' && turnTo(`/green/${encodeURIComponent(id)}`, route)}
    />
  )
}
