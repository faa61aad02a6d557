import { toJsonSchema } from '@valibot/to-json-schema'
import { courseFile, courseFromCount, writeCourse, type CourseReading } from '@swardwright/engine'
import { assumedSentences, courseErrorSentence } from '@swardwright/present'
import { BadInput, type Command, type Io } from './command.ts'
import { openCourse } from './files.ts'
import { readOptions, wholeNumber } from './options.ts'

const tell = (io: Io, { course, assumed }: CourseReading): void => {
  const area = course.greens.reduce((sum, green) => sum + green.areaM2, 0)
  io.out(
    `${course.name}: ${course.greens.length} greens, ${Math.round(area)} m2, ${course.machines.length} machines, ${course.people.length} people`,
  )
  const greenNames = new Map(course.greens.map((green) => [green.id, green.name]))
  for (const sentence of assumedSentences(assumed, { timeZone: course.timeZone, greenNames }))
    io.out(`assumed: ${sentence}`)
}

const check = async (argv: readonly string[], io: Io): Promise<number> => {
  const { words } = readOptions(argv, {}, { least: 1, most: 1, names: 'one course FILE' })
  tell(io, await openCourse(io, words[0] ?? ''))
  return 0
}

const IMPORT_OPTIONS = { greens: 'text', area: 'text', name: 'text', out: 'text' } as const

/** Turns a list of greens, a number of greens and an area, or another course file into a whole course file. */
const importCourse = async (argv: readonly string[], io: Io): Promise<number> => {
  const { options, words } = readOptions(argv, IMPORT_OPTIONS, {
    least: 0,
    most: 1,
    names: 'one FILE, or --greens N --area M2',
  })
  const reading = words[0] === undefined ? counted(options) : await openCourse(io, words[0])
  const text = writeCourse(reading.course, reading.assumed)
  if (options.out === undefined) {
    io.out(text)
    return 0
  }
  await io.writeFile(options.out, text)
  tell(io, reading)
  return 0
}

const counted = (options: {
  readonly greens?: string
  readonly area?: string
  readonly name?: string
}): CourseReading => {
  const greens = wholeNumber('greens', options.greens, { min: 1, max: 54 })
  const totalAreaM2 = Number(options.area)
  if (greens === undefined || options.area === undefined || !Number.isFinite(totalAreaM2))
    throw new BadInput('give one FILE, or --greens N --area M2 (the area of all greens in square metres)')
  const read = courseFromCount({
    greens,
    totalAreaM2,
    ...(options.name === undefined ? {} : { name: options.name }),
  })
  if (!read.ok) throw new BadInput(courseErrorSentence(read.error))
  return read.value
}

const schema = (_argv: readonly string[], io: Io): Promise<number> => {
  io.out(JSON.stringify(toJsonSchema(courseFile, { errorMode: 'ignore' }), null, 2))
  return Promise.resolve(0)
}

/** Course files from the terminal. */
export const COURSE_COMMANDS: readonly Command[] = [
  {
    noun: 'course',
    verb: 'check',
    usage: 'FILE',
    summary: 'reads a course file and says what it holds and what was taken for granted',
    run: check,
  },
  {
    noun: 'course',
    verb: 'import',
    usage: 'FILE | --greens N --area M2 [--name NAME] [--out FILE]',
    summary: 'makes a whole course file from a list of greens and areas, or from a number and a total area',
    run: importCourse,
  },
  { noun: 'course', verb: 'schema', usage: '', summary: "prints the course file's JSON Schema", run: schema },
]
