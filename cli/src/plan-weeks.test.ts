import { describe, expect, it } from 'vitest'
import { DEMO_COURSE, DEMO_NORMALS, DEMO_PRESCRIPTION } from './files.ts'
import { PLAN_WEEKS_COMMANDS } from './plan-weeks.ts'
import { runCommand } from './testing/run-command.ts'

const run = (argv: readonly string[], files: Readonly<Record<string, string>> = {}) =>
  runCommand(PLAN_WEEKS_COMMANDS, ['plan', 'weeks', ...argv], files)

/** Two years and quick plans: what is tested is the command, not the reckoning. */
const QUICK = ['--years', '2', '--schedules', '2', '--to', '2026-08-17'] as const

type Told = {
  readonly source: string
  readonly years: readonly number[]
  readonly weeks: readonly { readonly firstDay: string; readonly lastDay: string }[]
  readonly picks: readonly { readonly firstDay: string; readonly reserve: string | null }[]
}

/** A record in the service layout: the years 2021 to 2024, always dry and mild. */
const dryRecord = (): string => {
  const rows = ['Station Height: 71 M', 'Latitude: 53.4', 'Longitude: -6.2', 'date,rain,maxtp,mintp,wdsp']
  for (let ms = Date.UTC(2021, 0, 1); ms < Date.UTC(2025, 0, 1); ms += 86_400_000)
    rows.push(`${new Date(ms).toISOString().slice(0, 10)},0,21,11,6`)
  return rows.join('\n')
}

describe('plan weeks', () => {
  it('begins on the Monday after the demo’s own day, which is Sunday 9 August 2026, and goes by drawn years', async () => {
    const { code, out } = await run([...QUICK, '--json'])
    expect([0, 1]).toContain(code)
    const told = JSON.parse(out) as Told
    expect(told.source).toBe('drawn')
    expect(told.years).toEqual([2101, 2102])
    expect(told.weeks.map(({ firstDay, lastDay }) => [firstDay, lastDay])).toEqual([
      ['2026-08-10', '2026-08-14'],
      ['2026-08-17', '2026-08-21'],
    ])
    expect((await run([...QUICK, '--json'])).out).toBe(out)
  })

  it('goes by a record, and says in words what it found', async () => {
    const argv = [
      '--history',
      'record',
      '--from',
      '2026-08-17',
      '--to',
      '2026-08-24',
      '--days',
      '7',
      '--schedules',
      '2',
    ]
    const { code, out } = await run(argv, { record: dryRecord() })
    expect(code).toBe(0)
    expect(out).toContain('7 days of work wanted; 3 years of the record, 2021 to 2023')
    expect(out).toMatch(
      /^Mon 17 Aug: Finished by Sunday in all 3 years; good again .*; no clash\. Reserve: Mon 24 Aug\.$/mu,
    )
  })

  it('names the competitions that a week meets, and ends with 1 when no week is clear', async () => {
    const argv = ['--history', 'record', '--from', '2026-08-10', '--to', '2026-08-10', '--schedules', '2']
    const { code, out } = await run(argv, { record: dryRecord() })
    expect(code).toBe(1)
    expect(out).toContain('Seniors’ nine-hole medal on Thu 13 Aug: in the work in all 3 years')
    expect(out).toMatch(/Tarn Cup on Sat 15 Aug: (in the work|before the greens are back) in/u)
  })

  it('takes the usual prescription and the usual normals of the place for a course of one’s own', async () => {
    const { out } = await run(['--course', DEMO_COURSE, ...QUICK, '--years', '1', '--json'])
    expect((JSON.parse(out) as Told).source).toBe('drawn')
  })

  it.each([
    [['--from', '2026-02-30'], /--from is '2026-02-30'; it must be a day of the calendar as yyyy-mm-dd/u],
    [
      ['--from', '2026-08-17', '--to', '2026-08-10'],
      /--to is 2026-08-10; it must be 2026-08-17, the first day, or later/u,
    ],
    [['--days', '22'], /--days is '22'; it must be a whole number from 1 to 21/u],
    [['--years', '0'], /--years is '0'; it must be a whole number from 1 to 60/u],
    [['--every', 'week'], /--every is 'week'; it must be a whole number from 1 to 21/u],
    [['--schedules', '0'], /--schedules is '0'; it must be a whole number from 1 to 10000/u],
    [
      ['--from', '2026-01-01', '--to', '2027-06-01'],
      /the first days lie within 512 days; it must be at most 370 days/u,
    ],
    [
      ['--from', '2026-01-01', '--to', '2026-12-01', '--every', '1'],
      /there are 335 first days to choose from; it must be 1 to 200/u,
    ],
    [['--history', 'record', '--normals', DEMO_NORMALS], /give one of --normals F and --history F/u],
    [['--course', 'nowhere.geojson'], /nowhere\.geojson: there is no such file/u],
    [['--prescription', DEMO_COURSE], /demo-course/u],
    [['--frobnicate'], /frobnicate/u],
  ])('answers %j with one sentence and exit code 2', async (argv, sentence) => {
    const { code, out, err } = await run(argv, { record: dryRecord() })
    expect(code).toBe(2)
    expect(out).toBe('')
    expect(err).toMatch(sentence)
    expect(err.split('\n')).toHaveLength(1)
  })

  it('says which days a record lacks', async () => {
    const record = dryRecord().split('\n').slice(0, 104).join('\n')
    const { code, err } = await run(['--history', 'record', '--from', '2026-08-10', '--to', '2026-08-10'], {
      record,
    })
    expect(code).toBe(2)
    expect(err).toMatch(
      /no year of the record, 2021-01-01 to 2021-04-10, has rain and both temperatures on every day from 6 Aug to 23 Aug/u,
    )
  })

  it('takes a prescription file', async () => {
    const { code } = await run(['--prescription', DEMO_PRESCRIPTION, ...QUICK, '--years', '1'])
    expect([0, 1]).toContain(code)
  })
})
