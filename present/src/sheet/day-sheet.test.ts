import { describe, expect, it } from 'vitest'
import type { Course, Green, Machine, Person, Plan, PlanTask, Prescription } from '@swardwright/engine'
import { daySheets } from '../day-sheet.ts'
import { daySheetsHtml } from '../day-sheet-html.ts'
import { METRIC } from '../units.ts'

/** An invented club of two greens; every figure below is read off this file by hand. */
const green = (id: string, name: string, hole: number | null): Green => ({
  id,
  name,
  hole,
  areaM2: 450,
  at: [-4.92, 53.71],
  rootzone: { kind: 'sand', goodDepthMm: 200 },
  drainage: 'well',
  shade: 'open',
  weak: false,
  organicTests: [],
  services: [],
  servicesChecked: true,
})

const machine = (id: string, name: string, kind: Machine['kind']): Machine => ({
  id,
  name,
  kind,
  widthM: 1.2,
  overlapM: 0,
  speedMPerS: 1,
  turnS: 5,
  perGreenMin: 1,
  travelMPerS: 3,
  setUpMin: 5,
  crew: 1,
})

const person = (id: string, name: string): Person => ({
  id,
  name,
  skills: ['core', 'dress'],
  shift: { from: '06:00', to: '15:00' },
  overtimeMin: 0,
  breaks: [{ earliest: '09:00', latest: '10:30', minutes: 20 }],
  courseSetUpUntil: null,
})

const course: Course = {
  version: 1,
  id: 'c',
  name: 'Two & Three',
  timeZone: 'Europe/London',
  altitudeM: 30,
  now: null,
  greens: [green('g1', '<Dell>', 1), green('g2', 'Practice', null)],
  places: [],
  machines: [machine('corer', 'Corer', 'corer'), machine('dresser', 'Dresser', 'dresser')],
  people: [person('ann', "Ann O'Dea"), person('bob', 'Bob'), person('cy', 'Cy')],
  stores: [],
  fixtures: [],
  settings: {
    rainStopMmPerH: 0.2,
    darkFrom: null,
    mayStandDryNight: false,
    openGreensCap: 3,
    firstGreenCheckMin: 10,
    packUpMin: 20,
    detourFactor: 1.3,
    personTravelMPerS: 3,
    deepFromMm: 150,
    weather: {},
  },
  units: METRIC,
}

const sand = {
  kind: 'damp',
  surfaceMm: 1,
  fillFactor: 0.85,
  lossPercent: 3,
  bulkDensityKgPerM3: 1500,
  moisturePercent: 5,
} as const

const prescription: Prescription = {
  version: 1,
  name: 'p',
  groups: [
    {
      id: 'g',
      name: 'all',
      greens: 'all',
      cores: 'lift',
      workedBackShare: 0,
      sand,
      chain: [
        {
          operation: 'core',
          passes: 1,
          effects: ['opens'],
          tines: {
            holeDiameterMm: 13,
            coreDiameterMm: 10,
            acrossMm: 50,
            alongMm: 38,
            depthMm: 75,
            setLifeGreens: 12,
          },
        },
        { operation: 'dress', passes: 1, effects: ['dresses'] },
      ],
    },
  ],
}

let made = 0
const task = (
  operation: PlanTask['operation'],
  who: string,
  from: string,
  to: string,
  rest: Partial<PlanTask> = {},
): PlanTask => ({
  id: `t${++made}`,
  green: null,
  operation,
  pass: null,
  load: null,
  machine: operation === 'core' ? 'corer' : 'dresser',
  people: [who],
  start: `2026-08-11T${from}:00+01:00`,
  finish: `2026-08-11T${to}:00+01:00`,
  ...rest,
})

const plan: Plan = {
  version: 1,
  course: { id: 'c', hash: 'h' },
  prescription,
  start: '2026-08-11',
  seed: 1,
  schedules: 1,
  assumed: [],
  tasks: [
    task('setUp', 'ann', '05:00', '05:10', { machine: 'corer' }),
    task('move', 'ann', '05:10', '05:20', { machine: 'corer', green: 'g1' }),
    task('core', 'ann', '05:20', '06:00', { green: 'g1', pass: 1 }),
    task('core', 'ann', '06:10', '06:50', { green: 'g2', pass: 1 }),
    task('load', 'bob', '07:00', '07:10'),
    task('dress', 'bob', '07:20', '07:30', { green: 'g1', pass: 1, load: 1 }),
    task('load', 'bob', '07:40', '07:50'),
    task('dress', 'bob', '08:00', '08:10', { green: 'g1', pass: 1, load: 2 }),
    task('core', 'cy', '07:00', '08:00', {
      green: 'g1',
      start: '2026-08-12T07:00:00+01:00',
      finish: '2026-08-12T08:00:00+01:00',
    }),
  ],
  openings: [],
  posts: [],
  days: [{ date: '2026-08-11', lastSafeStart: '2026-08-11T11:05:00+01:00', finish: null }],
  sand: [{ green: 'g1', lowT: 1, likelyT: 1.8, highT: 2, loads: 2 }],
  unplanned: [],
  feasible: true,
  objective: {
    unfinishedGreens: 0,
    fixtureClashes: 0,
    shutGreenDays: 0,
    finish: null,
    overtimeMin: 0,
    travelMin: 0,
  },
}

const sheets = daySheets({ course, plan, weather: null, date: '2026-08-11' })
const [ann, bob] = sheets

describe('day sheets', () => {
  it('are one a person with work on that day', () => {
    expect(sheets.map((sheet) => sheet.person)).toEqual(["Ann O'Dea", 'Bob'])
  })

  it('list the greens in order with their times, moves left out', () => {
    expect(ann?.visits.map(({ from, to, hole, place }) => [from, to, hole, place])).toEqual([
      ['05:00', '05:10', '', 'yard'],
      ['05:20', '06:00', '1', '<Dell>'],
      ['06:10', '06:50', '', 'Practice'],
    ])
  })

  it('make one row of a dressing with its loads', () => {
    expect(bob?.visits.map(({ from, to, place }) => [from, to, place])).toEqual([
      ['07:00', '08:10', '<Dell>'],
    ])
    expect(bob?.visits[0]?.steps.map((step) => step.todo)).toEqual([
      'dress, load 1 of 2',
      'dress, load 2 of 2',
    ])
    expect(bob?.sand).toEqual([{ place: '<Dell>', words: '1.8 t in 2 loads' }])
  })

  it('carry the settings that the person needs and no others', () => {
    // 13 / 25.4 = 0.512, 10 / 25.4 = 0.394, 75 / 25.4 = 2.953, 1 / 25.4 = 0.039 in.
    expect(ann?.settings.flatMap(({ lines }) => lines)).toEqual([
      'coring: hole 13 mm (0.51 in), core 10 mm (0.39 in), every 50 \u00d7 38 mm, 75 mm (2.95 in) deep',
    ])
    expect(bob?.settings.flatMap(({ lines }) => lines)).toEqual([
      'dressing: damp sand, 1 mm (0.04 in) on the surface',
    ])
  })

  it('tell the last safe start, the break, and dark', () => {
    expect(ann?.lastSafeStart).toBe('11:05')
    expect(ann?.breaks).toEqual(['20 min between 09:00 and 10:30'])
    // suncalc 2.0.2: sunset at 53.71 N, 4.92 W on 11 August 2026 is 19:57:14 UTC, 20:57 on the club's clock.
    expect(ann?.stops).toHaveLength(1)
    expect(ann?.stops[0]).toBe('dark 20:57')
  })

  it('warn of the dark only who starts in it, and of dust only with dry sand', () => {
    const ids = (n: number): readonly string[] => sheets[n]?.cautions.map(({ id }) => id) ?? []
    expect(ids(0)).toContain('early')
    expect(ids(1)).not.toContain('early')
    expect(ids(1)).not.toContain('dust')
    expect(ids(0)).not.toContain('services')
  })
})

describe('the printed sheet', () => {
  const html = daySheetsHtml(sheets)

  it('has a page a post, a box a step, and the cautions once', () => {
    expect(html.match(/<section/gu)).toHaveLength(2)
    // Ann: set up, core, core; Bob: two loads.
    expect(html.match(/class="box"/gu)).toHaveLength(5)
    expect(html.match(/<footer>/gu)).toHaveLength(2)
    expect(html).toContain('break-after:page')
  })

  it('escapes every name', () => {
    expect(html).toContain('&lt;Dell&gt;')
    expect(html).not.toContain('<Dell>')
    expect(html).toContain('Ann O&#39;Dea')
    expect(html).toContain('Two &amp; Three')
  })
})
