import { describe, expect, it } from 'vitest'
import { CALC_COMMANDS } from './calc.ts'
import { COURSE_COMMANDS } from './course.ts'
import { DEMO_COURSE } from './files.ts'
import { PLAN_COMMANDS } from './plan.ts'
import { runCommand } from './testing/run-command.ts'

const COMMANDS = [...PLAN_COMMANDS, ...CALC_COMMANDS, ...COURSE_COMMANDS]
const FORECAST = DEMO_COURSE.replace('course.geojson', 'forecast.json')
const PRESCRIPTION = DEMO_COURSE.replace('course.geojson', 'prescription.json')

const run = (argv: readonly string[], files: Readonly<Record<string, string>> = {}) =>
  runCommand(COMMANDS, argv, files)

const make = (...more: readonly string[]): readonly string[] => [
  'plan',
  'make',
  '--course',
  DEMO_COURSE,
  '--start',
  '2026-08-10',
  '--forecast',
  FORECAST,
  '--prescription',
  PRESCRIPTION,
  '--schedules',
  '40',
  ...more,
]

describe('calc', () => {
  it('prints one line of JSON: 10 mm holes at 50 x 50 mm open 3.1 % (Woods 2009)', async () => {
    const { code, out } = await run([
      'calc',
      'run',
      'tining.areaShare',
      '{"holeDiameterMm":10,"acrossMm":50,"alongMm":50}',
    ])
    expect(code).toBe(0)
    expect(out).not.toContain('\n')
    expect(100 * (JSON.parse(out) as { areaShareOnePass: number }).areaShareOnePass).toBeCloseTo(3.14, 2)
  })

  it('lists every calculation with its inputs, outputs, sources and checks', async () => {
    const list = JSON.parse((await run(['calc', 'list', '--json'])).out) as Record<string, unknown>[]
    for (const key of ['name', 'title', 'inputs', 'outputs', 'sources', 'checks'])
      expect(list.every((entry) => entry[key] !== undefined)).toBe(true)
    expect(list.map((entry) => entry['name'])).toContain('sand.need')
  })

  it.each([
    [
      ['calc', 'run', 'tining.areaShare', '{"holeDiameterMm":900,"acrossMm":50,"alongMm":50}'],
      /holeDiameterMm is 900 mm; it must be/u,
    ],
    [['calc', 'run', 'no.such', '{}'], /no calculation called no\.such/u],
    [['calc', 'run', 'tining.areaShare', '{half'], /not JSON/u],
    [['calc', 'run'], /give a NAME/u],
    [['calc'], /followed by one of list, run/u],
    [['fly'], /no command 'fly'/u],
    [['plan', 'make'], /--course is missing/u],
    [
      ['plan', 'make', '--course', 'nowhere.geojson', '--start', '2026-08-10'],
      /nowhere\.geojson: there is no such file/u,
    ],
    [make('--seed', 'x'), /--seed is 'x'; it must be a whole number/u],
    [make('--days', '0'), /--days is '0'; it must be a whole number from 1 to 60/u],
    [make('--frobnicate'), /frobnicate/u],
  ])('answers %j with one sentence and exit code 2', async (argv, sentence) => {
    const { code, out, err } = await run(argv)
    expect(code).toBe(2)
    expect(out).toBe('')
    expect(err).toMatch(sentence)
    expect(err.split('\n')).toHaveLength(1)
  })
})

describe('plan', () => {
  it('makes a plan that it then finds clean, and names what a hand has broken', async () => {
    const made = await run(make('--json'))
    expect(made.code).toBe(0)
    const files = { 'plan.json': made.out }
    expect(await run(['plan', 'check', 'plan.json', '--forecast', FORECAST], files)).toEqual({
      code: 0,
      out: 'clean',
      err: '',
      written: {},
    })
    const plan = JSON.parse(made.out) as { tasks: { operation: string; machine: string | null }[] }
    const tasks = plan.tasks.filter(({ operation }) => operation !== 'setUp')
    const byHand = { 'plan.json': JSON.stringify({ ...plan, tasks }) }
    const judged = await run(['plan', 'check', 'plan.json', '--forecast', FORECAST, '--json'], byHand)
    expect(judged.code).toBe(1)
    const found = JSON.parse(judged.out) as { rule: string; green: unknown; at: unknown; by: unknown }[]
    expect(found.map(({ rule }) => rule)).toContain('noSetUp')
    expect(Object.keys(found[0] ?? {})).toEqual(expect.arrayContaining(['rule', 'green', 'at', 'by']))
  })

  it('tells the order of greens, the posts, the sand and the last safe starts in words', async () => {
    const { out } = await run(make())
    expect(out).toContain('19 greens planned, 0 not')
    expect(out).toMatch(/last safe start \d\d:\d\d/u)
    expect(out).toMatch(/Sand, dry: [\d.]+ to [\d.]+ t, likely/u)
  })

  it('exits with 1 and says why when a green is left out', async () => {
    const { code, out } = await run(make('--days', '1', '--json'))
    expect(code).toBe(1)
    const { unplanned } = JSON.parse(out) as { unplanned: { reason: string }[] }
    expect(unplanned.length).toBeGreaterThan(0)
  })

  it('judges a plan of which only the tasks are written down', async () => {
    const { version, course, prescription, start } = JSON.parse((await run(make('--json'))).out) as Record<
      string,
      unknown
    >
    const bare = { 'bare.json': JSON.stringify({ version, course, prescription, start, tasks: [] }) }
    const judged = await run(['plan', 'check', 'bare.json', '--json'], bare)
    expect(judged.code).toBe(1)
    expect(
      (JSON.parse(judged.out) as { rule: string }[]).filter(({ rule }) => rule === 'notAccountedFor'),
    ).toHaveLength(19)
  })

  it('prints schemas', async () => {
    expect(JSON.parse((await run(['plan', 'schema'])).out)).toHaveProperty('properties.tasks')
    expect(JSON.parse((await run(['course', 'schema'])).out)).toHaveProperty('properties.features')
  })
})

describe('course', () => {
  it('says what a file holds', async () => {
    const { code, out } = await run(['course', 'check', DEMO_COURSE])
    expect(code).toBe(0)
    expect(out).toMatch(/19 greens, \d+ m2/u)
  })

  it('makes a whole course of a list, and of a number and an area', async () => {
    const listed = await run(['course', 'import', 'greens.csv'], {
      'greens.csv': 'green,area m2\nFirst,450\nSecond,520\n',
    })
    expect(JSON.parse(listed.out)).toHaveProperty('type', 'FeatureCollection')
    const counted = await run(['course', 'import', '--greens', '18', '--area', '8100'])
    expect(
      (JSON.parse(counted.out) as { features: { properties: { kind: string } }[] }).features.filter(
        (f) => f.properties.kind === 'green',
      ),
    ).toHaveLength(18)
  })

  it('plans a rough course too', async () => {
    const rough = await run(['course', 'import', '--greens', '6', '--area', '2700'])
    const argv = [
      'plan',
      'make',
      '--course',
      'rough.geojson',
      '--start',
      '2026-08-10',
      '--schedules',
      '20',
      '--json',
    ]
    const { out } = await run(argv, { 'rough.geojson': rough.out })
    const plan = JSON.parse(out) as { openings: unknown[]; assumed: string[] }
    expect(plan.openings).toHaveLength(6)
    expect(plan.assumed).toContain('prescription-usual')
  })
})
