import {
  readHistory,
  readHistoryMap,
  serviceLayout,
  type CalculationError,
  type History,
  type Layout,
  type Result,
  type Station,
} from '@swardwright/engine'
import { calculationErrorWords, historyErrorWords } from '@swardwright/present'
import { BadInput, type Io } from './command.ts'

/** A record with the layout it was read by. */
export type OpenedHistory = { readonly history: History; readonly layout: Layout }

/** A JSON file. */
export const openJson = async (io: Io, path: string): Promise<unknown> => {
  const text = await io.readFile(path)
  try {
    return JSON.parse(text)
  } catch {
    throw new BadInput(`${path} is not whole JSON`)
  }
}

/** A JSON file that is read by a schema of the engine. */
export const openChecked = async <T>(
  io: Io,
  path: string,
  read: (json: unknown) => Result<T, CalculationError>,
): Promise<T> => {
  const result = read(await openJson(io, path))
  if (result.ok) return result.value
  throw new BadInput(`${path}: ${calculationErrorWords(result.error)}`)
}

const layoutOf = async (io: Io, path: string, text: string, mapPath: string | undefined): Promise<Layout> => {
  if (mapPath !== undefined) return openChecked(io, mapPath, readHistoryMap)
  const layout = serviceLayout(text)
  if (layout !== undefined) return layout
  throw new BadInput(`${path}: the layout is not known; say with --columns MAP.json where each column is`)
}

/** A file of daily weather, read by a map of columns or, without one, by the service layout. */
export const openHistory = async (
  io: Io,
  path: string,
  mapPath: string | undefined,
): Promise<OpenedHistory> => {
  const text = await io.readFile(path)
  const layout = await layoutOf(io, path, text, mapPath)
  const history = readHistory(text, layout)
  if (history.ok) return { history: history.value, layout }
  throw new BadInput(`${path}: ${historyErrorWords(history.error)}`)
}

/** Options that say where a station stands when its file does not. */
export const PLACE_OPTIONS = { latitude: 'text', longitude: 'text', altitude: 'text' } as const

/** Ties a negative number to the option before it (`--longitude -6.2`), which the option reader would take for an option. */
export const withNegatives = (argv: readonly string[]): readonly string[] =>
  argv.flatMap((word, i) => {
    if (/^-[\d.]/u.test(word) && argv[i - 1]?.startsWith('--') === true) return []
    const next = argv[i + 1]
    return word.startsWith('--') && next !== undefined && /^-[\d.]/u.test(next) ? [`${word}=${next}`] : [word]
  })

type PlaceOptions = { readonly latitude?: string; readonly longitude?: string; readonly altitude?: string }

const placeNumber = (name: string, text: string, min: number, max: number): number => {
  const value = Number(text)
  if (text.trim() !== '' && value >= min && value <= max) return value
  throw new BadInput(`--${name} is '${text}'; it must be a number from ${min} to ${max}`)
}

/** Where the station stands: the options first, then the map or the lines above the header. */
export const stationOf = (path: string, layout: Layout, options: PlaceOptions): Station => {
  const read = (
    name: keyof PlaceOptions,
    known: number | undefined,
    unit: string,
    min: number,
    max: number,
  ): number => {
    const text = options[name]
    if (text !== undefined) return placeNumber(name, text, min, max)
    if (known !== undefined) return known
    throw new BadInput(
      `${path} does not say where the station stands: give --${name} (${unit}), or ${name}${unit === 'm' ? 'M' : 'Deg'} in the map of columns`,
    )
  }
  return {
    latitudeDeg: read('latitude', layout.latitudeDeg, 'deg', -90, 90),
    longitudeDeg: read('longitude', layout.longitudeDeg, 'deg', -180, 180),
    altitudeM: read('altitude', layout.altitudeM, 'm', -430, 6000),
    windHeightM: layout.windHeightM,
  }
}
