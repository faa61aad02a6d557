import { computed } from '@preact/signals'
import type { Course, Green, UnitsWanted } from '@swardwright/engine'
import { METRIC } from '@swardwright/present'
import { facts } from './journal.ts'

/** The course as all entries together say it. Pages are shown only once there is one. */
export const course = computed(() => facts.value.course)

/** The course, for a page that is shown only once there is one. */
export const useCourse = (): Course => {
  const known = course.value
  if (known === null) throw new Error('a page was shown before the course was there')
  return known
}

/** The club’s name, for the head of every page. */
export const clubName = computed(() => course.value?.name ?? 'Swardwright')

/** The units that the club reads. */
export const units = computed((): UnitsWanted => course.value?.units ?? METRIC)

/** Greens in playing order: holes by number, then the practice greens. */
export const greensInOrder = computed((): readonly Green[] =>
  (course.value?.greens ?? []).toSorted((a, b) => (a.hole ?? 99) - (b.hole ?? 99)),
)

/** A green as it is called: its hole and its name. */
export const greenCalled = (green: Pick<Green, 'hole' | 'name'>): string =>
  green.hole === null ? green.name : `${green.hole} ${green.name}`

/** What each green is called, by id. */
export const greenNames = computed(
  (): ReadonlyMap<string, string> =>
    new Map((course.value?.greens ?? []).map((green) => [green.id, greenCalled(green)])),
)

/** What a green is called; its id where the course does not have it any more. */
export const greenName = (green: string): string => greenNames.value.get(green) ?? green
