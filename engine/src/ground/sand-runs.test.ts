import { expect, test } from 'vitest'
import { kidney, rectangle } from './fixtures/outlines.ts'
import { gateSettingFor } from './gate-setting.ts'
import { planPasses } from './passes.ts'
import { sandRuns } from './sand-runs.ts'

const settings = {
  widthM: 1.5,
  overlapM: 0,
  speedMPerS: 1,
  turnS: 10,
  turnRadiusM: 0,
  turnStyle: 'lift',
  laps: 0,
  order: 'backAndForth',
} as const

test('15 x 20 m at 1.5 m and 2 kg/m2: ten runs of 60 kg; a hopper of 200 kg takes three runs, so four loads', () => {
  const { runs } = planPasses(rectangle(15, 20), settings, 0)
  const split = sandRuns(runs, { boutM: 1.5, rateKgPerM2: 2, hopperKg: 200 })
  if (!split.ok) throw new Error(split.error.type)
  expect(split.value.massKg).toBeCloseTo(600, 6)
  expect(split.value.loads).toHaveLength(4)
  expect(split.value.loads.map((load) => Math.round(load.massKg)).reduce((a, b) => Math.max(a, b))).toBe(180)
  expect(split.value.loads.map((load) => load.firstRun)[0]).toBe(0)
})

test('loads follow each other without a gap, none is over the hopper, and together they are all runs', () => {
  const { runs, runLengthM } = planPasses(kidney(), settings, 30)
  const split = sandRuns(runs, { boutM: 1.5, rateKgPerM2: 4.5, hopperKg: 650 })
  if (!split.ok) throw new Error(split.error.type)
  const { loads } = split.value
  let next = 0
  for (const load of loads) {
    expect(load.firstRun).toBe(next)
    expect(load.massKg).toBeLessThanOrEqual(650 + 1e-6)
    expect(load.from).toEqual(runs[load.firstRun]?.from)
    expect(load.to).toEqual(runs[load.lastRun]?.to)
    next = load.lastRun + 1
  }
  expect(next).toBe(runs.length)
  expect(split.value.massKg).toBeCloseTo(runLengthM * 1.5 * 4.5, 6)
})

test('a run that needs more than a full hopper is told, not split on the green', () => {
  const { runs } = planPasses(rectangle(15, 20), settings, 0)
  expect(sandRuns(runs, { boutM: 1.5, rateKgPerM2: 8, hopperKg: 200 })).toMatchObject({
    ok: false,
    error: { type: 'runNeedsMoreThanHopper', run: 0, hopperKg: 200 },
  })
  expect(sandRuns(runs, { boutM: 1.5, rateKgPerM2: 0, hopperKg: 200 })).toMatchObject({
    error: { type: 'outOfRange', field: 'rateKgPerM2', unit: 'kg/m2' },
  })
})

test('a gate figure lies straight between two readings and is never guessed beyond them', () => {
  const readings = [
    { setting: 30, rateKgPerM2: 3 },
    { setting: 10, rateKgPerM2: 1 },
    { setting: 20, rateKgPerM2: 2.5 },
  ]
  // Between 10 (1.0) and 20 (2.5): 10 + 10 x (1.75 - 1) / 1.5 = 15.
  expect(gateSettingFor(1.75, readings)).toEqual({ ok: true, value: 15 })
  expect(gateSettingFor(3.2, readings)).toMatchObject({ error: { type: 'outsideReadings', maxKgPerM2: 3 } })
  expect(gateSettingFor(1, readings.slice(0, 1))).toMatchObject({ error: { type: 'tooFewReadings' } })
  expect(gateSettingFor(1, [...readings, { setting: 40, rateKgPerM2: 2 }])).toMatchObject({ ok: true })
  expect(
    gateSettingFor(2.9, [
      { setting: 1, rateKgPerM2: 3 },
      { setting: 2, rateKgPerM2: 2 },
    ]),
  ).toMatchObject({
    error: { type: 'notRising', setting: 1 },
  })
})
