import { describe, expect, it } from 'vitest'
import { DEMO_COURSE } from './files.ts'
import { runCommand } from './testing/run-command.ts'
import { GROUND_COMMANDS } from './ground.ts'

const run = (argv: readonly string[], files: Readonly<Record<string, string>> = {}) =>
  runCommand(GROUND_COMMANDS, ['ground', 'passes', ...argv], files)

type Answer = {
  readonly areaM2: number
  readonly headingDeg: number
  readonly runs: readonly { readonly from: readonly [number, number]; readonly lengthM: number }[]
  readonly runLengthM: number
  readonly turns: number
  readonly timeMin: number
  readonly missedM2: number
}

// A rectangle at the equator. A degree there is 111,319.491 m of longitude (2 pi x 6,378,137 / 360) and 110,574.276 m of latitude
// (the meridian's radius a (1 - e2) = 6,335,439.327 m): 0.00018 degree is 20.0375 m east, 0.00027 degree 29.855 m north.
const RECTANGLE = JSON.stringify({
  type: 'Polygon',
  coordinates: [
    [
      [0, 0],
      [0.00018, 0],
      [0.00018, 0.00027],
      [0, 0.00027],
      [0, 0],
    ],
  ],
})

const answer = async (argv: readonly string[], files = { 'g.geojson': RECTANGLE }) => {
  const { code, out, err } = await run([...argv, '--json'], files)
  expect({ code, err: code === 0 ? '' : err }).toEqual({ code: 0, err: '' })
  return JSON.parse(out) as Answer
}

describe('ground passes', () => {
  it('lays 17 runs of 29.85 m over a rectangle of 20.04 x 29.85 m at 1.2 m, and has exactly the fixed fields', async () => {
    const told = await answer([
      '--outline',
      'g.geojson',
      '--width',
      '1.2',
      '--heading',
      'best',
      '--speed',
      '1',
      '--turn',
      '10',
    ])
    expect(Object.keys(told)).toEqual([
      'areaM2',
      'headingDeg',
      'runs',
      'runLengthM',
      'turns',
      'turnLengthM',
      'coveredM2',
      'coveredTwiceM2',
      'missedM2',
      'timeMin',
    ])
    expect(told.areaM2).toBeCloseTo(20.0375 * 29.855, 0)
    expect(told.runs).toHaveLength(17)
    expect(told.runLengthM).toBeCloseTo(17 * 29.855, 1)
    expect(told.turns).toBe(16)
    expect(told.timeMin).toBeCloseTo((17 * 29.855 + 160) / 60, 2)
    expect(told.missedM2).toBe(0)
    expect(Math.min(told.headingDeg, 180 - told.headingDeg)).toBeLessThan(0.1)
  })

  it('takes a heading, an overlap and laps', async () => {
    const told = await answer([
      '--outline',
      'g.geojson',
      '--width',
      '1.2',
      '--overlap',
      '0.2',
      '--heading',
      '90',
      '--laps',
      '1',
    ])
    expect(told.headingDeg).toBe(90)
    // One lap takes 1 m off each side: ceil((27.855 - 0.2) / 1) = 28 runs and the lap.
    expect(told.runs).toHaveLength(29)
  })

  it('works a green of a course by its id, and says whose pace it took', async () => {
    const { code, out, err } = await run(['--course', DEMO_COURSE, '--green', 'g07', '--width', '1.2'])
    expect(code).toBe(0)
    expect(out).toMatch(/heading \d+ to \d+ \(\d+°\): \d+ runs/u)
    expect(err).toMatch(/^taken from .+: speed [\d.]+ m\/s, \d+ s a turn/u)
  })

  it('draws the runs into a file', async () => {
    const { written } = await run(['--outline', 'g.geojson', '--width', '1.2', '--svg', 'g.svg'], {
      'g.geojson': RECTANGLE,
    })
    expect(written['g.svg']).toMatch(/^<svg [^>]*viewBox/u)
    expect(written['g.svg']?.match(/data-part="run"/gu)).toHaveLength(17)
  })

  it.each([
    [['--outline', 'g.geojson'], '--width is missing'],
    [['--outline', 'g.geojson', '--width', 'wide'], "--width is 'wide'; it must be a number"],
    [['--outline', 'g.geojson', '--width', '0'], '--width is 0 m; it must be from 0.1 to 12 m'],
    [
      ['--outline', 'g.geojson', '--width', '1.2', '--overlap', '2'],
      '--overlap is 2 m; it must be from 0 to 1.08 m',
    ],
    [
      ['--outline', 'g.geojson', '--width', '1.2', '--heading', 'left'],
      "--heading is 'left'; it must be a number",
    ],
    [['--width', '1.2'], 'give either --course FILE with --green G, or --outline POLYGON.geojson'],
    [['--course', DEMO_COURSE, '--green', 'g99', '--width', '1.2'], "has no green 'g99'"],
    [
      ['--outline', 'eight', '--width', '1'],
      'crosses or touches itself, at longitude 0.000100, latitude 0.000100',
    ],
    [['--outline', 'text', '--width', '1'], 'text: it must be GeoJSON, KML, GPX'],
  ])('%j is refused in one sentence', async (argv, sentence) => {
    const eight = {
      type: 'Polygon',
      coordinates: [
        [
          [0, 0],
          [0.0002, 0.0002],
          [0.0002, 0],
          [0, 0.0002],
          [0, 0],
        ],
      ],
    }
    const files = { 'g.geojson': RECTANGLE, eight: JSON.stringify(eight), text: 'hello' }
    const { code, out, err } = await run(argv, files)
    expect(code).toBe(2)
    expect(out).toBe('')
    expect(err).toContain(sentence)
  })
})
