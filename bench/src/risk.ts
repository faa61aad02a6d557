import { performance } from 'node:perf_hooks'
import { makeSafePlan, planRisk, randomCourse, type PlanRisk } from '@swardwright/engine'
import { openDemo, type Demo } from './demo.ts'

/** The manager's level, the skies that the plan is made over, and the fresh ones that it is judged by. */
const LEVEL = 0.05
const DRAWS = 400
const FRESH = 500
const SCHEDULES = 1000

/** The bound of the promise: the level and two standard deviations of a share of so many draws. */
const LIMIT = LEVEL + 2 * Math.sqrt((LEVEL * (1 - LEVEL)) / FRESH)

type Week = Demo & { readonly name: string }

const weeks = (count: number): readonly Week[] => [
  { name: 'demo', ...openDemo() },
  ...Array.from({ length: count }, (_, index) => ({
    name: `course ${index + 1}`,
    ...randomCourse({ seed: 100 + index, greens: 12, weather: 'mixed', sand: 'enough' }),
  })),
]

const total = (risk: PlanRisk, of: 'opened' | 'finished'): number =>
  risk.days.reduce((sum, day) => sum + day[of].plain, 0)

const oneDecimal = (value: number): number => Math.round(value * 10) / 10

/** Share of fresh skies with a caught green when none is opened after the last safe start that was known when the plan was made. */
const chanceUntil = (fresh: PlanRisk['days'][number], lastSafeStart: string | null): number => {
  if (lastSafeStart === null) return 0
  const until = Date.parse(lastSafeStart)
  return fresh.curve.findLast(({ opens }) => Date.parse(opens) <= until)?.chance ?? 0
}

/** One week: its safe plan judged by fresh skies, the plain plan beside it. */
const weekOf = (week: Week) => {
  const { course, prescription, weather, start } = week
  const input = { course, prescription, weather, start, courseHash: '' }
  const begun = performance.now()
  const safe = makeSafePlan(input, { level: LEVEL, draws: DRAWS, seed: 1 }, { seed: 1, schedules: SCHEDULES })
  if (!safe.ok) throw new Error(`${week.name}: ${safe.error.type}`)
  const seconds = (performance.now() - begun) / 1000
  const fresh = planRisk(safe.value.plan, input, { level: LEVEL, draws: FRESH, seed: 2 })
  if (!fresh.ok) throw new Error(`${week.name}: ${fresh.error.type}`)
  const { plainRisk, plan, risk } = safe.value
  return {
    name: week.name,
    greens: course.greens.length,
    isClean: plan.feasible,
    seconds: oneDecimal(seconds),
    days: fresh.value.days.map((day) => {
      const lastSafeStart = risk.days.find(({ date }) => date === day.date)?.lastSafeStart ?? null
      const caughtShare = chanceUntil(day, lastSafeStart)
      return { date: day.date, planned: day.planned, caughtShare, isUnder: caughtShare <= LIMIT }
    }),
    safe: {
      opened: oneDecimal(total(fresh.value, 'opened')),
      finished: oneDecimal(total(fresh.value, 'finished')),
    },
    plain: {
      opened: oneDecimal(total(plainRisk, 'opened')),
      finished: oneDecimal(total(plainRisk, 'finished')),
      highestChance: Math.max(0, ...plainRisk.days.map(({ chance }) => chance)),
    },
  }
}

/** Share of days with a caught green on fresh weather against the manager's level, with the greens opened beside it. `--courses N` adds made-up courses (default 4). */
export const run = (argv: readonly string[]): Promise<number> => {
  const at = argv.indexOf('--courses')
  const count = at < 0 ? 4 : Number(argv[at + 1])
  if (!Number.isInteger(count) || count < 0 || count > 50) {
    process.stderr.write('--courses must be a whole number from 0 to 50\n')
    return Promise.resolve(2)
  }
  const made = weeks(count).map((week) => {
    process.stderr.write(`${week.name} ...\n`)
    return weekOf(week)
  })
  const days = made.flatMap((week) => week.days)
  const report = {
    level: LEVEL,
    limit: Math.round(LIMIT * 10_000) / 10_000,
    draws: DRAWS,
    freshDraws: FRESH,
    daysUnder: days.filter(({ isUnder }) => isUnder).length,
    days: days.length,
    caughtShare: days.reduce((sum, { caughtShare }) => sum + caughtShare, 0) / Math.max(1, days.length),
    weeks: made,
  }
  if (argv.includes('--json')) process.stdout.write(`${JSON.stringify(report)}\n`)
  else {
    for (const { name, safe, plain, days: own, seconds } of made)
      process.stdout.write(
        `${name}: safe opens ${safe.opened}, finishes ${safe.finished}; plain opens ${plain.opened}, finishes ${plain.finished} (worst day ${Math.round(plain.highestChance * 100)} %); caught ${own.map(({ caughtShare }) => `${(caughtShare * 100).toFixed(1)} %`).join(', ')}; ${seconds} s\n`,
      )
    process.stdout.write(
      `${report.daysUnder} of ${report.days} days under ${(LIMIT * 100).toFixed(1)} %, ${(report.caughtShare * 100).toFixed(1)} % on average\n`,
    )
  }
  return Promise.resolve(report.daysUnder === report.days ? 0 : 1)
}
