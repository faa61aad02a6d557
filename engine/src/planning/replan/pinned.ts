import type { Loyalty } from './crew.ts'
import { coursesOf, type GreenCourse } from './judge-field.ts'
import { bestOffer } from './place.ts'
import { placeWhole } from './place-whole.ts'
import type { Broken, Wish, Wishes } from './repair.ts'

/** Pins on greens that can be had, sorted. */
export type Pinned = {
  /** Greens whose pin can be had at all: machine and people can be there. */
  readonly pinned: ReadonlySet<number>
  /** Those of them that can't be kept within the rules whatever the others do: they stand all the same. */
  readonly against: ReadonlySet<number>
  /** Whether a green lies where it is pinned, so that others give way to it. */
  readonly isFixed: (course: GreenCourse) => boolean
}

/** Whether a green is in time where it is pinned, with machines and people to itself behind all that stands. */
const fitsAlone = (broken: Broken, green: number, { day, openMin }: Wish, loyalty: Loyalty): boolean => {
  const from = openMin ?? broken.problem.committed?.nowMin ?? 0
  const whole = { green, old: broken.old, loyalty, from, day, keepFixtures: false }
  const field = placeWhole(broken.stood, whole, broken.marks)
  if (field === null) return false
  const course = coursesOf(broken.problem, field.tasks, broken.marks).find((one) => one.green === green)
  return openMin === null || course?.opened === openMin
}

/** Whether machine and people can be there at the pinned minute, whatever the weather; true where only the day is pinned. */
const canBeHad = (
  { problem, stood, marks }: Broken,
  green: number,
  { openMin }: Wish,
  loyalty: Loyalty,
): boolean => {
  const step = problem.greens[green]?.steps[marks[green]?.open ?? -1]
  if (openMin === null || step === undefined) return true
  const wanted = { green, step, machine: null, people: [], from: openMin, end: problem.horizonMin, loyalty }
  return bestOffer(stood, { ...wanted, anyHour: true })?.crew.start === openMin
}

/** Sorts the pins on greens that are not opened yet. */
export const pinnedOf = (broken: Broken, wishes: Wishes, loyalty: Loyalty): Pinned => {
  const greens = [...wishes.greens].filter(([green, wish]) => canBeHad(broken, green, wish, loyalty))
  const against = new Set(
    greens.flatMap(([green, wish]) => (fitsAlone(broken, green, wish, loyalty) ? [] : [green])),
  )
  return {
    pinned: new Set(greens.map(([green]) => green)),
    against,
    isFixed: ({ green, opened }) => {
      const wish = wishes.greens.get(green)
      return wish !== undefined && (wish.openMin === null ? against.has(green) : opened === wish.openMin)
    },
  }
}
