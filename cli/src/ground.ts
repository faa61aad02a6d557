import {
  bestHeading,
  checkedPassSettings,
  coverageOf,
  degreesOf,
  planPasses,
  type Coverage,
  type Passes,
  type PassSettings,
  type Plane,
} from '@swardwright/engine'
import {
  counted,
  decimal,
  durationWords,
  groundDrawing,
  headingWords,
  toSvgString,
} from '@swardwright/present'
import { BadInput, type Command, type Io } from './command.ts'
import { groundFromCourseFile, groundFromOutline, type Ground } from './ground-source.ts'
import { passSettingsErrorSentence } from './ground-words.ts'
import { readOptions, required, wholeNumber } from './options.ts'

const OPTIONS = {
  course: 'text',
  green: 'text',
  outline: 'text',
  width: 'text',
  overlap: 'text',
  heading: 'text',
  laps: 'text',
  speed: 'text',
  turn: 'text',
  json: 'flag',
  svg: 'text',
} as const

type Given = { readonly [K in Exclude<keyof typeof OPTIONS, 'json'>]?: string }

const figure = (name: string, text: string): number => {
  const value = Number(text)
  if (text.trim() === '' || !Number.isFinite(value))
    throw new BadInput(`--${name} is '${text}'; it must be a number`)
  return value
}

const groundOf = (given: Given, widthM: number, io: Io): Promise<Ground> => {
  if (given.outline !== undefined && given.course === undefined && given.green === undefined)
    return groundFromOutline(io, given.outline, widthM)
  if (given.course !== undefined && given.green !== undefined && given.outline === undefined)
    return groundFromCourseFile(io, given.course, given.green, widthM)
  throw new BadInput('give either --course FILE with --green G, or --outline POLYGON.geojson')
}

const settingsOf = (given: Given, widthM: number, ground: Ground): PassSettings => {
  const checked = checkedPassSettings({
    widthM,
    overlapM: given.overlap === undefined ? 0 : figure('overlap', given.overlap),
    speedMPerS: given.speed === undefined ? ground.machine.speedMPerS : figure('speed', given.speed),
    turnS: given.turn === undefined ? ground.machine.turnS : figure('turn', given.turn),
    turnRadiusM: 0,
    turnStyle: 'lift',
    laps: wholeNumber('laps', given.laps, { min: 0, max: 20 }) ?? 0,
    order: 'backAndForth',
  })
  if (!checked.ok) throw new BadInput(passSettingsErrorSentence(checked.error))
  return checked.value
}

const passesFor = (given: Given, ground: Ground, settings: PassSettings): Passes => {
  const { heading = 'best' } = given
  if (heading !== 'best') {
    const headingDeg = figure('heading', heading)
    if (headingDeg < -360 || headingDeg > 360)
      throw new BadInput(`--heading is '${heading}'; it must be 'best' or compass degrees from -360 to 360`)
    return planPasses(ground.polygon, settings, headingDeg)
  }
  const best = bestHeading(ground.polygon, settings)
  const [passes] = best.ok ? best.value.passes : []
  if (passes === undefined) throw new Error('without banned headings one is always found')
  return passes
}

const rounded = (value: number, decimals: number): number => Number(value.toFixed(decimals))

/** The answer in its fixed form: lengths to 1 mm, areas to 0.01 m2, places to about 1 cm. */
const answer = (ground: Ground, passes: Passes, areas: Coverage, plane: Plane) => ({
  areaM2: rounded(ground.areaM2, 2),
  headingDeg: rounded(passes.headingDeg, 3),
  runs: passes.runs.map((run) => ({
    from: degreesOf(plane, run.from),
    to: degreesOf(plane, run.to),
    lengthM: rounded(run.lengthM, 3),
  })),
  runLengthM: rounded(passes.runLengthM, 3),
  turns: passes.turns,
  turnLengthM: rounded(passes.turnLengthM, 3),
  coveredM2: rounded(areas.coveredM2, 2),
  coveredTwiceM2: rounded(areas.coveredTwiceM2, 2),
  missedM2: rounded(areas.missedM2, 2),
  timeMin: rounded(passes.timeMin, 3),
})

const tell = (io: Io, ground: Ground, passes: Passes, areas: Coverage): void => {
  io.out(`${ground.name}: ${decimal(ground.areaM2, 0)} m2`)
  io.out(
    `heading ${headingWords(passes.headingDeg)}: ${counted(passes.runs.length, 'run', 'runs')} of ${decimal(passes.runLengthM, 0)} m in all, ${counted(passes.turns, 'turn', 'turns')}`,
  )
  io.out(
    `covered ${decimal(areas.coveredM2, 0)} m2, of that twice ${decimal(areas.coveredTwiceM2, 0)} m2; missed ${decimal(areas.missedM2, 1)} m2`,
  )
  io.out(
    `time ${durationWords(Math.ceil(passes.timeMin))}, of that turning ${durationWords(Math.round(passes.turnMin))}`,
  )
}

/**
 * `ground passes`: the runs of a machine over one green. What was taken for granted goes to the error stream, so that the JSON stays whole.
 * Throws `BadInput` for what a person typed wrong.
 */
export const groundPasses = async (argv: readonly string[], io: Io): Promise<number> => {
  const { options } = readOptions(argv, OPTIONS)
  const { json = false, ...given } = options
  const widthM = figure('width', required('width', given.width))
  const ground = await groundOf(given, widthM, io)
  const settings = settingsOf(given, widthM, ground)
  const passes = passesFor(given, ground, settings)
  const areas = coverageOf(ground.polygon, settings, passes)
  if (given.speed === undefined || given.turn === undefined)
    io.err(
      `taken from ${ground.machine.title}: speed ${settings.speedMPerS} m/s, ${settings.turnS} s a turn (--speed, --turn)`,
    )
  if (ground.isApproximate)
    io.err('approximate: the green has no outline, so an ellipse of its area stands in')
  if (json) io.out(JSON.stringify(answer(ground, passes, areas, ground.plane)))
  else tell(io, ground, passes, areas)
  if (given.svg !== undefined) {
    const { name, polygon, isApproximate } = ground
    const drawing = groundDrawing({ name, polygon, isApproximate, passes: [{ runs: passes, widthM }] })
    await io.writeFile(given.svg, `${toSvgString(drawing, 'print')}\n`)
  }
  return 0
}

/** Passes over a green from the terminal. */
export const GROUND_COMMANDS: readonly Command[] = [
  {
    noun: 'ground',
    verb: 'passes',
    usage:
      '(--course FILE --green G | --outline POLYGON.geojson) --width M [--overlap M] [--heading best|DEG] [--laps N] [--speed M_PER_S] [--turn SECONDS] [--json] [--svg FILE]',
    summary: 'lays the runs of a machine over one green: heading, order, lengths, areas and time',
    run: groundPasses,
  },
]
