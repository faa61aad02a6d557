import {
  clock,
  counted,
  durationWords,
  planNames,
  quantityWords,
  TIGHT_MIN,
  violationSentence,
} from '@swardwright/present'
import type { Course, Plan, Violation } from '@swardwright/engine'
import { goOrHold, type GoOrHold } from '../../compute/go-or-hold.ts'
import { Fact } from '../../parts/Figure.tsx'
import { later } from '../../parts/later.tsx'
import { Part } from '../../parts/Page.tsx'
import { units, useCourse } from '../../state/course.ts'
import { draft, settledPlan, shownPlan, verdict } from '../../state/plan.ts'
import { rainOfPlan } from '../../state/rain-of-plan.ts'
import { weather } from '../../state/weather.ts'
import { CourseMap } from '../course/CourseMap.tsx'
import { DayStrip } from '../plan/DayStrip.tsx'
import { DayOrder } from '../plan/OrderOfGreens.tsx'
import { PostsByPart } from './PostsByPart.tsx'
import { WORDS } from './words.ts'

const EveChance = later(async () => (await import('./EveChance.tsx')).EveChance)

type Reason = { readonly words: string; readonly isTight?: boolean }

/** By when all is finished, and how long before the rain. */
const finishReason = (day: GoOrHold, at: (instant: string) => string): Reason | null => {
  if (day.finish === null) return null
  const by = `${counted(day.greens, 'green', 'greens')} finished by ${at(day.finish)}`
  if (day.spareMin === null) return { words: `${by}.` }
  const isTight = day.spareMin < TIGHT_MIN
  return {
    words: `${by}, ${isTight ? 'only ' : ''}${durationWords(day.spareMin)} before the rain.`,
    isTight,
  }
}

/** The reasons, each with its hour. */
const reasons = (day: GoOrHold, course: Course, plan: Plan): readonly Reason[] => {
  const at = (instant: string) => clock(instant, course.timeZone)
  const finish = finishReason(day, at)
  const sentence = (one: Violation): string => violationSentence(one, planNames(course, plan))
  if (day.greens === 0) return [{ words: WORDS.nothingOpened }]
  if (day.broken.length > 0) return day.broken.slice(0, 3).map((one) => ({ words: sentence(one) }))
  return [
    ...day.asPinned.slice(0, 3).map((one) => ({ words: `${WORDS.asPinned} ${sentence(one)}` })),
    { words: day.rainFrom === null ? WORDS.dry : `Dry until ${at(day.rainFrom)}.` },
    ...(finish === null ? [] : [finish]),
    ...(day.start === null ? [] : [{ words: `First work ${at(day.start)}.` }]),
  ]
}

/** Deliveries and fixtures of the day: what must be rung off if it is HOLD. */
const comesOn = (course: Course, date: string): readonly string[] => [
  ...course.stores.flatMap((store) =>
    store.deliveries
      .filter((delivery) => delivery.date === date)
      .map((delivery) => `${delivery.time} sand, ${quantityWords('sand', delivery.massT, units.value)}`),
  ),
  ...course.fixtures
    .filter((fixture) => fixture.date === date)
    .map(
      (fixture) =>
        `${fixture.from} ${fixture.name}, ${fixture.greens === 'all' ? 'all greens' : counted(fixture.greens.length, 'green', 'greens')}`,
    ),
]

type Decided = { readonly date: string; readonly day: GoOrHold; readonly plan: Plan }

const Verdict = ({ date, day, plan }: Decided) => {
  const course = useCourse()
  const isRisked = day.greens > 0 && settledPlan.value !== null && weather.value !== null
  return (
    <div class="verdict">
      <p class={`strike ${day.go ? 'leaf' : 'rust'}`}>{day.go ? WORDS.go : WORDS.hold}</p>
      <div class="tight">
        <ul class="reasons">
          {reasons(day, course, plan).map(({ words, isTight }) => (
            <li key={words} class={isTight === true ? 'ochre' : undefined}>
              {words}
            </li>
          ))}
          {isRisked ? <EveChance date={date} /> : null}
        </ul>
        {draft.value === null ? null : (
          <p class="small ochre">
            {WORDS.notSettled} <a href="/plan">{WORDS.toPlan}</a> <a href="/weeks">{WORDS.toWeeks}</a>
          </p>
        )}
      </div>
    </div>
  )
}

const Hours = ({ day }: { readonly day: GoOrHold }) => {
  const { timeZone } = useCourse()
  const row = (word: string, instant: string | null) =>
    instant === null ? null : <Fact word={word}>{clock(instant, timeZone)}</Fact>
  return (
    <dl class="facts large">
      {row(WORDS.lastSafeStart, day.lastSafeStart)}
      {row(WORDS.firstDrag, day.firstDrag)}
      {row(WORDS.finish, day.finish)}
    </dl>
  )
}

/** The evening before, and a quarter to six: go or hold and why, the order, the posts. */
export const EveBefore = ({ date }: { readonly date: string }) => {
  const course = useCourse()
  const plan = shownPlan.value
  if (plan === null) return null
  const answer = verdict.value.value
  const day = goOrHold(plan, date, {
    timeZone: course.timeZone,
    rain: rainOfPlan.value,
    violations: answer !== null && answer.ok ? answer.value : [],
  })
  const comes = comesOn(course, date)
  const planDay = plan.days.find((one) => one.date === date)
  return (
    <div class="wide">
      <Verdict date={date} day={day} plan={plan} />
      <div class="columns">
        <div class="wide">
          <Hours day={day} />
          <DayStrip date={date} />
          <Part title={WORDS.order} class="stack">
            {planDay === undefined ? null : <DayOrder plan={plan} day={planDay} />}
          </Part>
        </div>
        <div class="wide">
          <Part title={WORDS.posts}>
            <PostsByPart plan={plan} date={date} />
          </Part>
          <Part title={WORDS.ringOff} class="tight">
            {comes.length === 0 ? <p>{WORDS.nothingComes}</p> : null}
            <ul>
              {comes.map((one) => (
                <li key={one}>{one}</li>
              ))}
            </ul>
          </Part>
          <CourseMap course={course} walk={plan} date={date} />
        </div>
      </div>
      <a href="/plan">{WORDS.toPlan}</a>
    </div>
  )
}
