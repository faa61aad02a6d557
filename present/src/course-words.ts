import {
  readAssumedFact,
  type CourseAssumption,
  type CourseError,
  type CourseThing,
  type CourseWhere,
} from '@swardwright/engine'

const THING_WORDS: Readonly<Record<CourseThing, string>> = {
  green: 'greens',
  place: 'places',
  machine: 'machines',
  person: 'people',
  store: 'sand stores',
  fixture: 'fixtures',
  service: 'buried services',
}

/** The place of an error in words: the name first, since that is what the person knows; then the path. */
const place = ({ feature, name, path }: CourseWhere): string => {
  const named = name === null ? '' : `'${name}', `
  return feature === null ? `${named}${path}` : `${named}feature ${feature + 1} (${path})`
}

/** Everything after the feature's own number is told by the field, so that a sentence does not say one path twice. */
const featurePlace = ({ feature, name, path }: CourseWhere): string =>
  feature === null
    ? place({ feature, name, path })
    : `${name === null ? '' : `'${name}', `}feature ${feature + 1}`

const choices = (words: readonly string[]): string =>
  words.length <= 24 ? words.join(', ') : `${words.slice(0, 24).join(', ')} and ${words.length - 24} more`

/** Degrees with four decimals (about ten metres) or five, and the hemisphere in words that a map search takes. */
const degrees = (lonDeg: number, latDeg: number): string =>
  `${Math.abs(latDeg).toFixed(5)} ${latDeg < 0 ? 'S' : 'N'}, ${Math.abs(lonDeg).toFixed(5)} ${lonDeg < 0 ? 'W' : 'E'}`

const withUnit = (value: number | string, unit: string): string =>
  unit === '1' ? `${value}` : `${value} ${unit}`

type Wording = {
  readonly [T in CourseError['type']]: (error: Extract<CourseError, { readonly type: T }>) => string
}

const SENTENCES: Wording = {
  tooLarge: (e) => `The file has ${e.sizeMB} MB; a course file has at most ${e.maxMB} MB.`,
  notJson: (e) =>
    e.position === null
      ? 'This is not a course file: it is not JSON text.'
      : `This is not a course file: it stops being JSON text at character ${e.position + 1}.`,
  tooDeep: (e) =>
    `This is not a course file: at character ${e.position + 1} its brackets nest deeper than ${e.maxDepth}.`,
  notGeoJson: (e) =>
    `This is not GeoJSON as a course file needs it: expected ${e.expected}, found ${e.received}.`,
  noGreens: () => 'The course has no green: at least one is needed.',
  tooMany: (e) =>
    `Too many ${e.what} at ${place(e.where)}: ${e.received}, and at most ${e.max} are accepted.`,
  wrongVersion: (e) => `The course file's version is ${e.received}; this program reads version ${e.allowed}.`,
  missing: (e) => `Missing at ${featurePlace(e.where)}: ${e.field}, ${e.expected}.`,
  wrongType: (e) => `At ${place(e.where)} ${e.expected} is expected, found ${e.received}.`,
  outOfRange: (e) =>
    `At ${featurePlace(e.where)} ${e.field} should be ${withUnit(`${e.min} to ${e.max}`, e.unit)}: ${e.received}.`,
  notAllowed: (e) => `At ${place(e.where)} ${e.received} is not known; accepted: ${choices(e.allowed)}.`,
  unknownField: (e) => `At ${place(e.where)} there is no such field; known here: ${choices(e.allowed)}.`,
  notBelow: (e) =>
    `At ${place(e.where)} ${e.field} (${e.received}) should be below ${e.limitField} (${e.limit}).`,
  badTimeZone: (e) => `'${e.received}' is not a time zone; write one such as Europe/London.`,
  twoOfOneId: (e) => `Two ${THING_WORDS[e.what]} have the id '${e.id}'; each needs its own.`,
  twoOfOneName: (e) =>
    `Two greens are called '${e.name}' (${e.ids[0] === e.ids[1] ? e.ids[0] : e.ids.join(' and ')}); each needs its own name.`,
  unknownReference: (e) =>
    `At ${place(e.where)} the ${e.what === 'green' ? 'green' : 'sand bay'} '${e.id}' is not in the course; known: ${choices(e.allowed)}.`,
  unclosedRing: (e) =>
    `The outline of ${featurePlace(e.where)} is not closed: its last point lies ${e.gapM.toFixed(1)} m from the first and should repeat it.`,
  selfCrossing: (e) =>
    `The outline of ${featurePlace(e.where)} crosses itself near ${degrees(e.lonDeg, e.latDeg)}.`,
  sliver: (e) =>
    `The outline of ${featurePlace(e.where)} holds no surface: it is ${e.meanWidthM.toFixed(2)} m wide on average, and at least ${e.minMeanWidthM} m is needed.`,
  islandOutside: (e) =>
    `An island of ${featurePlace(e.where)} lies outside its outline near ${degrees(e.lonDeg, e.latDeg)}.`,
  coordinateOutOfRange: (e) =>
    `At ${place(e.where)} longitude should be -180 to 180 and latitude -85 to 85: [${e.lon}, ${e.lat}]${e.swapped ? '; GeoJSON writes longitude first, these two look swapped' : ''}.`,
  tooFarApart: (e) =>
    `The green '${e.where.name ?? ''}' lies ${e.distanceKm} km from the first green, and one course is at most ${e.maxKm} km across; longitude comes before latitude.`,
  areaMismatch: (e) =>
    `At ${featurePlace(e.where)} areaM2 says ${e.statedM2} m2 but the outline holds ${e.outlineM2} m2; more than ${e.maxPercent} % apart, one of the two is wrong.`,
}

/** What is wrong with a course file, a list of greens or a number of greens, in exactly one sentence: where, what is accepted, what was found. */
export const courseErrorSentence = (error: CourseError): string => {
  const word: (error: never) => string = SENTENCES[error.type]
  return word(error as never)
}

type Names = ReadonlyMap<string, string>

type FactWording = Readonly<Record<CourseAssumption, (values: readonly string[], names: Names) => string>>

/** 'all greens', or the greens by name; by id where no name is at hand. */
const greensOf = ([ids]: readonly string[], names: Names): string =>
  ids === undefined || ids === 'all'
    ? 'all greens'
    : ids
        .split(',')
        .map((id) => names.get(id) ?? id)
        .join(', ')

const fieldsOf = (value: string | undefined): string => (value ?? '').replaceAll(',', ', ')

const FACTS: FactWording = {
  'course.rough': () =>
    'This is a rough course, made of areas alone: every figure narrows with each fact you add.',
  'course.name': () => 'The course has no name yet.',
  'course.timeZone': ([zone]) => `The clock is taken to be ${zone}, by longitude and without summer time.`,
  'course.altitudeM': ([height]) => `The height above sea is taken to be ${height} m.`,
  'course.at': ([lat, lon]) =>
    `The course is taken to lie at latitude ${lat}, longitude ${lon}; daylight hangs on it.`,
  'feature.skipped': ([count]) => `${count} features without a kind were left out.`,
  'green.areaDiffers': ([id = '', stated, outline], names) =>
    `${names.get(id) ?? id}: the stated ${stated} m2 is used, though the outline holds ${outline} m2.`,
  'green.name': (v, names) => `Names were made up for ${greensOf(v, names)}.`,
  'green.hole': (v, names) => `The number of the hole is not told for ${greensOf(v, names)}.`,
  'green.outline': (v, names) =>
    `No outline for ${greensOf(v, names)}: passes are timed on an ellipse of the same area.`,
  'green.areaM2': () => 'All greens are taken to be of one size.',
  'green.at': () => "The greens' places are made up, and so are the ways between them.",
  'green.rootzone': (v, names) => `Sand, 150 mm of good profile, is taken for ${greensOf(v, names)}.`,
  'green.drainage': (v, names) => `Moderate drainage is taken for ${greensOf(v, names)}.`,
  'green.shade': (v, names) => `No shade is taken for ${greensOf(v, names)}.`,
  'green.weak': (v, names) => `Nothing is known to be weak of ${greensOf(v, names)}.`,
  'green.organicTests': (v, names) => `No organic-matter test for ${greensOf(v, names)}.`,
  'green.servicesChecked': (v, names) =>
    `Nobody is known to have looked for buried services under ${greensOf(v, names)}, so no deep work there.`,
  'place.shed': () => 'The shed is taken to be in the middle of the greens.',
  'place.sandBay': () => 'The sand bay is taken to be at the shed.',
  'machines.typical': () => 'A typical shed is taken: one machine of each kind that is needed, two mowers.',
  'machine.typical': ([id, fields]) => `Usual figures are taken for machine ${id}: ${fieldsOf(fields)}.`,
  'people.typical': ([count]) => `A typical crew of ${count} is taken.`,
  'person.typical': ([id, fields]) => `Usual hours and skills are taken for ${id}: ${fieldsOf(fields)}.`,
  'stores.typical': ([tonnes]) => `Sand is taken to be at hand, ${tonnes} t of each kind.`,
  'store.typical': ([id, fields]) => `Usual figures are taken for the sand store ${id}: ${fieldsOf(fields)}.`,
  'fixtures.none': () => 'No fixtures are known.',
  'settings.typical': ([fields]) => `Usual settings are taken: ${fieldsOf(fields)}.`,
  'units.metric': ([fields]) => `Metric units are taken: ${fieldsOf(fields)}.`,
}

/** What a course takes for granted, in one sentence; null when the fact is not a course's. `greenNames` are names by id. */
export const courseAssumptionSentence = (fact: string, greenNames: Names = new Map()): string | null => {
  const read = readAssumedFact(fact)
  return read === null ? null : FACTS[read.code](read.values, greenNames)
}
