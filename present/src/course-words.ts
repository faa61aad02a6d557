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

/** Whose the thing is: the name first, since that is what the person knows. Features count from 1 for people. */
const owner = ({ feature, name }: CourseWhere): string => {
  if (feature === null) return name === null ? '' : `'${name}'`
  return name === null ? `feature ${feature + 1}` : `'${name}' (feature ${feature + 1})`
}

/** The field by its path inside the feature or file, and whose it is. A list of greens has lines instead. */
const spot = (where: CourseWhere, field = ''): string => {
  if (where.path.startsWith('line ')) return `${field} in ${where.path}`.trim()
  const inner =
    where.feature === null
      ? where.path
      : where.path.replace(/^features\[\d+\]\.?/u, '').replace(/^properties\.?/u, '')
  const path =
    inner.endsWith(field) || field.includes(' ') ? '' : `${inner}${inner === '' ? '' : '.'}${field}`
  const told = field.includes(' ') ? field : path === '' ? inner : path
  const whose = owner(where)
  return `${told === '' ? 'the file' : told}${whose === '' ? '' : ` of ${whose}`}`
}

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
  tooLarge: (e) => `The file has ${e.sizeMB} MB; at most ${e.maxMB} MB are read.`,
  notJson: (e) =>
    e.position === null
      ? 'The file is not JSON text.'
      : `The file is not JSON text: it goes wrong at character ${e.position + 1}.`,
  tooDeep: (e) =>
    `The file's brackets nest deeper than ${e.maxDepth} at character ${e.position + 1}, so it is no file of this program.`,
  notGeoJson: (e) =>
    `This is not GeoJSON as a course file needs it: expected ${e.expected}, found ${e.received}.`,
  noGreens: () => 'The course has no green: at least one is needed.',
  tooMany: (e) => `Too many ${e.what} in ${spot(e.where)}: at most ${e.max} are read, found ${e.received}.`,
  wrongVersion: (e) => `The file's version should be ${e.allowed}: ${e.received}.`,
  missing: (e) => `Missing: ${spot(e.where, e.field)}, which should be ${e.expected}.`,
  wrongType: (e) => `Wrong: ${spot(e.where, e.field)} should be ${e.expected}, found ${e.received}.`,
  outOfRange: (e) =>
    `Out of range: ${spot(e.where, e.field)} should be ${withUnit(`${e.min} to ${e.max}`, e.unit)}, found ${e.received}.`,
  notAllowed: (e) =>
    `Not known: ${spot(e.where, e.field)} is ${e.received}, and should be one of ${choices(e.allowed)}.`,
  unknownField: (e) =>
    `Not known: there is no field ${spot(e.where, e.field)}; the fields there are ${choices(e.allowed)}.`,
  notBelow: (e) =>
    `In the wrong order: ${spot(e.where, e.field)} should be below ${e.limitField} (${e.limit}), found ${e.received}.`,
  badTimeZone: (e) => `The time zone should be one such as Europe/London, found '${e.received}'.`,
  twoOfOneId: (e) => `Two ${THING_WORDS[e.what]} have the id '${e.id}'; each needs its own.`,
  twoOfOneName: (e) => `Two greens are called '${e.name}' (${e.ids.join(' and ')}); each needs its own name.`,
  unknownReference: (e) =>
    `Not known: ${spot(e.where)} names the ${e.what === 'green' ? 'green' : 'sand bay'} '${e.id}', and the course has ${choices(e.allowed)}.`,
  unclosedRing: (e) =>
    `The outline of ${owner(e.where)} is not closed: its last point should repeat the first, found it ${e.gapM.toFixed(1)} m away.`,
  selfCrossing: (e) => `The outline of ${owner(e.where)} crosses itself near ${degrees(e.lonDeg, e.latDeg)}.`,
  sliver: (e) =>
    `The outline of ${owner(e.where)} holds no surface: it should be at least ${e.minMeanWidthM} m wide on average, found ${e.meanWidthM.toFixed(2)} m.`,
  islandOutside: (e) =>
    `An island of ${owner(e.where)} lies outside its outline near ${degrees(e.lonDeg, e.latDeg)}.`,
  coordinateOutOfRange: (e) =>
    `Out of range: ${spot(e.where)} should be [longitude -180 to 180, latitude -85 to 85], found [${e.lon}, ${e.lat}]${e.swapped ? ' - the two look swapped' : ''}.`,
  tooFarApart: (e) =>
    `The green '${e.where.name ?? ''}' lies ${e.distanceKm} km from the first green, and a course is at most ${e.maxKm} km across (longitude comes before latitude).`,
  areaMismatch: (e) =>
    `The areaM2 of ${owner(e.where)} is ${e.statedM2} m2 but its outline holds ${e.outlineM2} m2; they should agree within ${e.maxPercent} %.`,
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
  'feature.skipped': ([count]) => `Features without a kind were left out: ${count}.`,
  'green.areaDiffers': ([id = '', stated, outline], names) =>
    `The stated ${stated} m2 of ${names.get(id) ?? id} is used, though the outline holds ${outline} m2.`,
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
