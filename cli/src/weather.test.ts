import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { DEMO_COURSE } from './files.ts'
import { runCommand } from './testing/run-command.ts'
import { WEATHER_COMMANDS } from './weather.ts'

const FORECAST = DEMO_COURSE.replace('course.geojson', 'forecast.json')
const NORMALS = DEMO_COURSE.replace('course.geojson', 'normals.json')

const run = (argv: readonly string[], files: Readonly<Record<string, string>> = {}) =>
  runCommand(WEATHER_COMMANDS, ['weather', ...argv], files)

/** Where the npm package keeps its data (its `exports` do not tell). */
const seattle = (): string => {
  const main = createRequire(import.meta.url).resolve('vega-datasets')
  return join(main.slice(0, main.lastIndexOf('vega-datasets')), 'vega-datasets/data/seattle-weather.csv')
}

const MAP = JSON.stringify({
  date: { column: 'date' },
  rainMm: { column: 'precipitation' },
  minC: { column: 'temp_min' },
  maxC: { column: 'temp_max' },
  windMPerS: { column: 'wind' },
  latitudeDeg: 47.45,
  longitudeDeg: -122.31,
  altitudeM: 130,
})

const SERVICE =
  'date,rain,maxtp,mintp,wdsp\n2024-01-01,1.5,9,3,10\n2024-01-02,wet,9,3,10\n2024-01-04,0,8,2,10\n'

describe('weather import', () => {
  it('reads the Seattle record by a map of columns', async () => {
    const { code, out } = await run(['import', seattle(), '--columns', 'map', '--json'], { map: MAP })
    expect(code).toBe(0)
    expect(JSON.parse(out)).toEqual({
      days: 1461,
      from: '2012-01-01',
      to: '2015-12-31',
      gaps: [],
      refused: [],
      columns: ['rainMm', 'minC', 'maxC', 'windMPerS'],
    })
  })

  it('tells each gap and each row refused, by its line in the file', async () => {
    const { code, out } = await run(['import', 'record', '--json'], { record: SERVICE })
    expect(code).toBe(1)
    expect(JSON.parse(out)).toMatchObject({
      days: 2,
      gaps: [{ column: 'day', from: '2024-01-02', to: '2024-01-03', days: 2 }],
      refused: [{ row: 3, why: "rain is 'wet', which is no number" }],
    })
  })

  it.each([
    [{ record: 'a,b\n1,2\n' }, [], /layout is not known/u],
    [{ record: SERVICE, map: '{' }, ['--columns', 'map'], /not whole JSON/u],
    [
      { record: SERVICE, map: MAP.replace('47.45', '147') },
      ['--columns', 'map'],
      /latitudeDeg is 147 deg; it must be -90 to 90 deg/u,
    ],
    [{ record: SERVICE, map: MAP }, ['--columns', 'map'], /rainMm should be in column 'precipitation'/u],
    [{ record: 'date,rain,maxtp,mintp\n' }, [], /there are no rows/u],
  ])('says in one sentence what is wrong: %j %j', async (files, more, words) => {
    const { code, err } = await run(['import', 'record', ...more], files)
    expect(code).toBe(2)
    expect(err).toMatch(words)
  })
})

describe('weather et', () => {
  it('gives each day with the fall-backs taken', async () => {
    const place = ['--latitude', '53.4', '--longitude', '-6.2', '--altitude', '71']
    const { code, out } = await run(['et', '--history', 'record', '--json', ...place], { record: SERVICE })
    expect(code).toBe(0)
    const days = JSON.parse(out)
    expect(days.map(({ date }: { date: string }) => date)).toEqual([
      '2024-01-01',
      '2024-01-02',
      '2024-01-03',
      '2024-01-04',
    ])
    expect(days[0].assumed).toEqual(['dewPointIsMinimum', 'radiationFromTemperatureRange'])
    expect(days[0].etMm).toBeGreaterThan(0.2)
    expect(days[1]).toEqual({ date: '2024-01-02', etMm: null, assumed: [] })
  })

  it('asks where the station stands when nothing says so', async () => {
    const { code, err } = await run(['et', '--history', 'record'], { record: SERVICE })
    expect(code).toBe(2)
    expect(err).toMatch(/give --latitude/u)
  })
})

describe('weather workable', () => {
  it('tells every operation of every hour of the demo forecast', async () => {
    const { code, out } = await run(['workable', '--course', DEMO_COURSE, '--forecast', FORECAST, '--json'])
    expect(code).toBe(0)
    const { hours } = JSON.parse(out)
    const at = (time: string) => hours.find((hour: { time: string }) => hour.time === time)?.byOperation
    expect(at('2026-08-10T02:00:00+01:00').core).toEqual({ workable: false, because: ['dark'], cautions: [] })
    expect(at('2026-08-10T11:00:00+01:00').core.workable).toBe(true)
    expect(Object.keys(at('2026-08-10T11:00:00+01:00'))).toHaveLength(13)
  })

  it('says that a forecast is cut off', async () => {
    const files = { half: readFileSync(FORECAST, 'utf8').slice(0, 900) }
    const { code, err } = await run(['workable', '--course', DEMO_COURSE, '--forecast', 'half'], files)
    expect(code).toBe(2)
    expect(err).toMatch(/^half: /u)
  })
})

describe('weather generate', () => {
  it('draws years from normals in the layout that import reads, the same for the same seed', async () => {
    const made = await run(['generate', '--normals', NORMALS, '--years', '3', '--seed', '5'])
    expect(made.code).toBe(0)
    expect(made.out.split('\n')).toHaveLength(1 + 3 * 365)
    expect((await run(['generate', '--normals', NORMALS, '--years', '3', '--seed', '5'])).out).toBe(made.out)
    const read = await run(['import', 'made', '--json'], { made: made.out })
    expect(JSON.parse(read.out)).toMatchObject({
      days: 1095,
      gaps: [],
      refused: [],
      from: '2101-01-01',
      to: '2103-12-31',
    })
  })

  it('draws from a record', async () => {
    const argv = ['generate', '--history', seattle(), '--columns', 'map', '--years', '1', '--seed', '1']
    expect((await run(argv, { map: MAP })).out.split('\n')[0]).toBe('date,rain,maxtp,mintp,wdsp,g_rad')
  })

  it.each([
    [['--years', '3', '--seed', '1'], /give one of --normals F and --history F/u],
    [['--normals', NORMALS, '--seed', '1'], /--years is missing/u],
    [['--normals', NORMALS, '--years', '0', '--seed', '1'], /--years is '0'/u],
    [
      ['--normals', NORMALS, '--years', '1', '--seed', '1', '--from', '2025-02-30'],
      /--from is '2025-02-30'/u,
    ],
  ])('says in one sentence what is wrong: %j', async (more, words) => {
    const { code, err } = await run(['generate', ...more])
    expect(code).toBe(2)
    expect(err).toMatch(words)
  })
})
