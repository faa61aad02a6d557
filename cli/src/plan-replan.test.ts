import { beforeAll, describe, expect, it } from 'vitest'
import { DEMO_COURSE } from './files.ts'
import { PLAN_COMMANDS } from './plan.ts'
import { runCommand } from './testing/run-command.ts'

/* What the commands print and how they end; that plans made again are right is the engine's own test. */

const FORECAST = DEMO_COURSE.replace('course.geojson', 'forecast.json')
const PRESCRIPTION = DEMO_COURSE.replace('course.geojson', 'prescription.json')
const NOW = '2026-08-10T10:30'

const factsFile = (...facts: readonly object[]): string => JSON.stringify({ version: 1, facts })

const FILES: Record<string, string> = {
  'out.json': factsFile({
    kind: 'machineOut',
    machine: 'dresser',
    from: '2026-08-10T10:30:00+01:00',
    until: '2026-08-10T11:00:00+01:00',
  }),
}

const run = (...argv: readonly string[]) => runCommand(PLAN_COMMANDS, ['plan', ...argv], FILES)

const WITH = ['--course', DEMO_COURSE, '--forecast', FORECAST, '--now', NOW] as const

beforeAll(async () => {
  const course = ['make', '--course', DEMO_COURSE, '--start', '2026-08-10', '--forecast', FORECAST]
  const made = await run(...course, '--prescription', PRESCRIPTION, '--schedules', '5', '--json')
  FILES['plan.json'] = made.out
  const plan = JSON.parse(made.out) as { readonly openings: readonly { readonly green: string }[] }
  // The green that is opened last is not in work on the first morning.
  const green = plan.openings.at(-1)?.green
  FILES['skipped.json'] = factsFile({ kind: 'skipped', green, why: 'too wet' })
  // The demo's forecast has rain on the second day from 15:00.
  FILES['pinned.json'] = factsFile({ kind: 'pinned', green, at: '2026-08-11T13:30:00+01:00' })
}, 60_000)

describe('plan replan', () => {
  it('prints a plan that plan check finds clean with the same facts at the same moment', async () => {
    const made = await run('replan', 'plan.json', ...WITH, '--facts', 'out.json', '--json')
    expect(made.err).toBe('')
    const again = JSON.parse(made.out) as { readonly plan: object; readonly caught: readonly object[] }
    expect(made.code).toBe(again.caught.length === 0 ? 0 : 1)
    FILES['again.json'] = JSON.stringify(again.plan)
    const checked = await run('check', 'again.json', ...WITH, '--facts', 'out.json')
    expect([checked.code, checked.out]).toEqual([0, 'clean'])
    // Held against the plan as it was before, the outage is broken.
    const old = await run('check', 'plan.json', ...WITH, '--facts', 'out.json', '--json')
    expect(old.code).toBe(1)
    expect((JSON.parse(old.out) as readonly { readonly rule: string }[]).map(({ rule }) => rule)).toContain(
      'machineOut',
    )
  }, 60_000)

  it('ends with 0 where nothing has happened, with 1 where a green is left out, and says so in words', async () => {
    expect(await run('replan', 'plan.json', ...WITH)).toMatchObject({
      code: 0,
      out: expect.stringMatching(/^Nothing changes\.\nAs planned: /u),
    })
    const less = await run('replan', 'plan.json', ...WITH, '--facts', 'skipped.json')
    expect(less.code).toBe(1)
    expect(less.out).toMatch(/is left out, because it is left out by hand\./u)
  }, 60_000)
})

describe('a pin into the rain', () => {
  it('stands in the plan made again; plan check ends with 1 and calls what is broken as pinned, and nothing else', async () => {
    const told = await run('replan', 'plan.json', ...WITH, '--facts', 'pinned.json')
    expect(told.out).toMatch(/As pinned: .* stands open in rain on Tue 11 Aug at 15:00/u)
    const made = await run('replan', 'plan.json', ...WITH, '--facts', 'pinned.json', '--json')
    FILES['stands.json'] = JSON.stringify((JSON.parse(made.out) as { readonly plan: object }).plan)
    const checked = await run('check', 'stands.json', ...WITH, '--facts', 'pinned.json')
    const [first, ...rest] = checked.out.split('\n')
    expect(checked.code).toBe(1)
    expect(first).toMatch(/^as pinned: nothing is broken but/u)
    expect(rest.length).toBeGreaterThan(0)
    expect(rest.filter((line) => !line.includes('(as pinned): '))).toEqual([])
  }, 60_000)
})

describe('plan bail-out', () => {
  it('tells what becomes of each green in work, and ends with 1 where one is caught', async () => {
    const soon = await run('bail-out', 'plan.json', ...WITH, '--rain-in', '20', '--json')
    const out = JSON.parse(soon.out) as {
      readonly rainAt: string
      readonly caught: number
      readonly greens: readonly { readonly mode: string }[]
    }
    expect(out.rainAt).toBe('2026-08-10T10:50:00+01:00')
    expect(out.greens.length).toBeGreaterThan(0)
    expect(soon.code).toBe(out.caught > 0 ? 1 : 0)
    const words = await run('bail-out', 'plan.json', ...WITH, '--rain-in', '20')
    expect(words.out).toMatch(/^Rain at 10:50: /u)
  }, 60_000)
})

describe('what cannot be used', () => {
  const fact = (one: object): string => factsFile(one)
  const REPLAN = ['replan', 'plan.json', ...WITH]
  const ALL = [REPLAN, ['bail-out', 'plan.json', ...WITH, '--rain-in', '30'], ['check', 'plan.json', ...WITH]]

  it.each([
    [
      'a machine that there is not',
      fact({ kind: 'machineOut', machine: 'digger', from: '2026-08-10T10:30:00+01:00', until: null }),
      /facts\[0\] \(machineOut\): machine is 'digger', which there is not; it can be /u,
    ],
    [
      'what has not happened yet',
      fact({ kind: 'finished', green: 'g02', at: '2026-08-10T18:00:00+01:00' }),
      /facts\[0\] \(finished\): at is .*after now/u,
    ],
    [
      'a field out of its range',
      fact({ kind: 'slower', operation: 'cut', factor: 9 }),
      /facts\[0\]\.factor/u,
    ],
    ['no JSON', '{half', /not JSON/u],
  ])('is one sentence and exit code 2: %s', async (_, text, sentence) => {
    FILES['bad.json'] = text
    for (const command of text === '{half' ? ALL : [REPLAN]) {
      const { code, out, err } = await run(...command, '--facts', 'bad.json')
      expect([code, out]).toEqual([2, ''])
      expect(err).toMatch(sentence)
      expect(err.split('\n')).toHaveLength(1)
    }
  })

  it.each([
    [['replan', 'plan.json', '--course', DEMO_COURSE], /--now is missing/u],
    [['replan', 'plan.json', '--course', DEMO_COURSE, '--now', 'noon'], /now is 'noon'/u],
    [['replan', 'plan.json', ...WITH, '--facts', 'nowhere.json'], /nowhere\.json: there is no such file/u],
    [['bail-out', 'plan.json', ...WITH], /--rain-in is missing/u],
    [['bail-out', 'plan.json', ...WITH, '--rain-in', '700'], /--rain-in is '700'.*1 to 600/u],
  ])('is one sentence and exit code 2: %j', async (argv, sentence) => {
    const { code, out, err } = await run(...argv)
    expect([code, out]).toEqual([2, ''])
    expect(err).toMatch(sentence)
    expect(err.split('\n')).toHaveLength(1)
  })
})
