import { clock, dateAt, quantityWords, setsWords, tineName } from '@swardwright/present'
import { later } from '../../parts/later.tsx'
import { Part } from '../../parts/Page.tsx'
import { today } from '../../state/clock.ts'
import { greenName, units, useCourse } from '../../state/course.ts'
import { facts } from '../../state/journal.ts'
import { touch } from '../../state/undo.ts'
import type { Course } from '@swardwright/engine'
import type { Problem } from '@swardwright/journal'
import { SAND_NAMES } from '../trouble/words.ts'
import { WORDS } from './words.ts'
import { mayRecord } from '../../state/access.ts'

/** A problem in a few words. */
const problemWords = ({ value }: Problem, course: Course): string => {
  const name = (id: string): string =>
    [...course.machines, ...course.people].find((one) => one.id === id)?.name ?? id
  const more = value.words === undefined ? '' : `: ${value.words}`
  switch (value.problem) {
    case 'machineOut':
      return `${name(value.machine)} ${WORDS.out}${more}`
    case 'personOut':
      return `${name(value.person)} ${WORDS.out}${more}`
    case 'green':
      return `${greenName(value.green)}${more}`
    case 'late':
      return `${value.person === undefined ? WORDS.everybody : name(value.person)} ${WORDS.lateFrom} ${clock(value.until, course.timeZone)}${more}`
    case 'slower':
      return `${name(value.machine)}: ${value.factor} times the planned minutes${more}`
    case 'sandShort':
      return `${SAND_NAMES[value.sand]}: ${quantityWords('sand', value.massT, units.value)} ${WORDS.isLeft}${more}`
    case 'tinesShort': {
      const tines = course.tineSets?.find(({ id }) => id === value.store)
      const kind = tines === undefined ? value.store : tineName(tines, units.value)
      return `${kind}: ${setsWords(value.sets)} ${WORDS.isLeft}${more}`
    }
    case 'other':
      return value.words
  }
}

const Strip = later(async () => (await import('../photos/Strip.tsx')).Strip)

const photosOf = (problem: Problem) => facts.value.photos.filter(({ value }) => value.about === problem.entry)

/** Problems that nobody has ended, newest first, with who told them and when; a press says that one is over. */
export const Problems = () => {
  const course = useCourse()
  const open = facts.value.problems.filter(({ solved }) => solved === null).toReversed()
  if (open.length === 0) return null
  const when = (at: string): string =>
    dateAt(at, course.timeZone) === today.value ? ` ${clock(at, course.timeZone)}` : ''
  return (
    <Part title={WORDS.problems}>
      <ul class="rows">
        {open.map((problem) => (
          <li key={problem.entry}>
            <div class="line apart">
              <div class="tight">
                <p class="name">{problemWords(problem, course)}</p>
                <p class="quiet small">
                  {problem.author}
                  {when(problem.at)}
                  {problem.value.problem === 'machineOut' || problem.value.problem === 'personOut'
                    ? WORDS.outToday
                    : ''}
                </p>
                {photosOf(problem).length === 0 ? null : <Strip photos={photosOf(problem)} />}
              </div>
              {mayRecord.value ? (
                <button
                  type="button"
                  onClick={() =>
                    void touch(
                      'problemSolved',
                      { problem: problem.entry },
                      `${WORDS.isOver}: ${problemWords(problem, course)}`,
                    )
                  }
                >
                  {WORDS.isOver}
                </button>
              ) : null}
            </div>
          </li>
        ))}
      </ul>
    </Part>
  )
}
