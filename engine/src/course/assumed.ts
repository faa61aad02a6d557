/**
 * What a course takes for granted because nobody said it, as short coded facts: `code` or `code:value` or `code:value:value`.
 * Closed; `courseAssumptionSentence` of the present room words them. A list of greens is `all` when it is all of them.
 */
export const COURSE_ASSUMPTIONS = [
  /** The course was made of a number of greens and a total area, or a list of areas. */
  'course.rough',
  'course.name',
  'course.timeZone',
  'course.altitudeM',
  /** Where the course lies, for daylight: latitude, longitude. */
  'course.at',
  /** Features without a kind that were left out; how many. */
  'feature.skipped',
  /** The stated area stands though the outline's differs by more than 2 %: green, stated, outline. */
  'green.areaDiffers',
  'green.name',
  'green.hole',
  'green.outline',
  /** All greens are taken to be of one size. */
  'green.areaM2',
  /** The greens' places, and so the ways between them, are made up. */
  'green.at',
  'green.rootzone',
  'green.drainage',
  'green.shade',
  'green.weak',
  'green.organicTests',
  'green.servicesChecked',
  'place.shed',
  'place.sandBay',
  'machines.typical',
  'machine.typical',
  'people.typical',
  'person.typical',
  'stores.typical',
  'store.typical',
  'fixtures.none',
  'settings.typical',
  'units.metric',
] as const

/** The code of an assumption. */
export type CourseAssumption = (typeof COURSE_ASSUMPTIONS)[number]

/** Puts a code and its values together. Values hold no colon. */
export const assumedFact = (code: CourseAssumption, ...values: readonly (string | number)[]): string =>
  [code, ...values].join(':')

/** Takes a fact apart; null when its code is not one of a course. */
export const readAssumedFact = (
  fact: string,
): { readonly code: CourseAssumption; readonly values: readonly string[] } | null => {
  const [word, ...values] = fact.split(':')
  const code = COURSE_ASSUMPTIONS.find((known) => known === word)
  return code === undefined ? null : { code, values }
}
