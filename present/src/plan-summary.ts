import type { Course, Plan } from '@swardwright/engine'
import { assumedSentences } from './assumed-words.ts'
import { boundSentence } from './bound-words.ts'
import { TASK_WORDS } from './operation-words.ts'
import { pinRiskSentences, planNames } from './plan-words.ts'
import { clock, dayHeading, instantMs } from './times.ts'

/** The plan in lines of text, as people read it: order of greens, posts, sand, what is left out, what is taken for granted. */
export const planSummary = (
  plan: Plan,
  course: Course,
  unplannedWords: (entry: Plan['unplanned'][number]) => string,
): string => {
  const name = (id: string): string => course.greens.find((green) => green.id === id)?.name ?? id
  const person = (id: string): string => course.people.find((one) => one.id === id)?.name ?? id
  const at = (instant: string | null): string =>
    instant === null ? '-' : clock(instantMs(instant), course.timeZone)
  const greenNames = new Map(course.greens.map((green) => [green.id, green.name]))
  const days = plan.days.flatMap(({ date, lastSafeStart, finish }) => [
    '',
    `${dayHeading(date)}: finished by ${at(finish)}${lastSafeStart === null ? '' : `, last safe start ${at(lastSafeStart)}`}`,
    ...plan.openings
      .filter((opening) => opening.opened.startsWith(date))
      .map(
        (o) =>
          `  ${name(o.green)}: opened ${at(o.opened)}, cleared ${at(o.cleared)}, dressed ${at(o.dressed)}, finished ${at(o.finished)}`,
      ),
    ...plan.posts
      .filter((post) => post.date === date)
      .map(
        (post) =>
          `  ${person(post.person)}: ${post.operations
            .filter((kind) => kind !== 'move')
            .map((kind) => TASK_WORDS[kind].work)
            .join(', ')}`,
      ),
  ])
  const total = (key: 'lowT' | 'likelyT' | 'highT'): string =>
    plan.sand.reduce((sum, entry) => sum + entry[key], 0).toFixed(1)
  const bound = boundSentence(plan, course)
  const loads = plan.sand.reduce((sum, entry) => sum + entry.loads, 0)
  return [
    `${course.name}, from ${dayHeading(plan.start)}: ${plan.openings.length} greens planned, ${plan.unplanned.length} not`,
    ...days,
    '',
    `Sand, dry: ${total('lowT')} to ${total('highT')} t, likely ${total('likelyT')} t, ${loads} dresser loads`,
    ...(bound === null ? [] : [bound]),
    ...pinRiskSentences(plan, planNames(course, plan)).map((sentence) => `As pinned: ${sentence}`),
    ...plan.unplanned.map((entry) => `Not planned: ${unplannedWords(entry)}`),
    ...assumedSentences(plan.assumed, { timeZone: course.timeZone, greenNames }).map(
      (sentence) => `Assumed: ${sentence}`,
    ),
  ].join('\n')
}
