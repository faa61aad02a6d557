import { RULES, UNPLANNED_REASONS, type PlanTask, type Rule, type Violation } from '@swardwright/engine'
import { describe, expect, it } from 'vitest'
import { unplannedSentence, violationSentence, type PlanNames } from './plan-words.ts'
import { IMPERIAL, METRIC } from './units.ts'

const task = (id: string, operation: PlanTask['operation'], more: Partial<PlanTask> = {}): PlanTask => ({
  id,
  green: 'g7',
  operation,
  pass: 1,
  load: null,
  machine: 'corer',
  people: ['ann'],
  start: '2026-08-10T09:00:00+01:00',
  finish: '2026-08-10T09:30:00+01:00',
  ...more,
})

const TASKS = [
  task('core', 'core'),
  task('move', 'move', { people: ['ann', 'bob'] }),
  task('set', 'setUp', { green: null }),
  task('home', 'move', { green: null }),
  task('load', 'load', { machine: 'dresser', load: 2 }),
  task('dress', 'dress', { machine: 'dresser', people: ['bob'] }),
  task('drag', 'dragIn', { machine: null }),
  task('ghost', 'core', { machine: 'ghost', people: ['ann', 'zed'] }),
]

const NAMES: PlanNames = {
  timeZone: 'Europe/London',
  units: METRIC,
  greens: new Map([['g7', '7 Long Meadow']]),
  machines: new Map([
    ['corer', 'Corer'],
    ['dresser', 'Dresser'],
  ]),
  people: new Map([
    ['ann', 'Ann'],
    ['bob', 'Bob'],
  ]),
  tasks: new Map(TASKS.map((one) => [one.id, one])),
}

/** 14:00 UTC in August is 15:00 in London; 10 August 2026 is a Monday. */
const said = (rule: Rule, tasks: readonly string[], more: Partial<Violation> = {}): string =>
  violationSentence({ rule, green: 'g7', at: '2026-08-10T14:00:00Z', by: 40, tasks, ...more }, NAMES)

const WORDED: readonly (readonly [string, string])[] = [
  [
    said('openInRain', ['core', 'drag']),
    '7 Long Meadow stands open in rain on Mon 10 Aug at 15:00 for 40 min.',
  ],
  [
    said('machineTwice', ['core', 'move']),
    'Corer is on two tasks at once on Mon 10 Aug at 15:00: coring 7 Long Meadow and moving Corer to 7 Long Meadow share 40 min.',
  ],
  [
    said('personTwice', ['core', 'move'], { by: 100 }),
    'Ann is on two tasks at once on Mon 10 Aug at 15:00: coring 7 Long Meadow and moving Corer to 7 Long Meadow share 1 h 40 min.',
  ],
  [
    said('unknownId', ['ghost']),
    "The plan names machine 'ghost' and person 'zed', which the course does not have.",
  ],
  [said('unknownId', [], { green: 'z' }), "The plan names green 'z', which the course does not have."],
  [said('badTime', ['core'], { at: null }), 'Coring 7 Long Meadow has a time that cannot be read.'],
  [
    said('crewShort', ['drag'], { by: 1 }),
    'Dragging in 7 Long Meadow on Mon 10 Aug at 15:00 is 1 person short.',
  ],
  [
    said('noSkill', ['core'], { by: 2 }),
    'Coring 7 Long Meadow on Mon 10 Aug at 15:00 has 2 people without the skill for it.',
  ],
  [said('missingOperation', [], { at: null, by: 1 }), '7 Long Meadow lacks an operation of its chain.'],
  [
    said('outOfOrder', ['core', 'dress']),
    'Dressing 7 Long Meadow starts on Mon 10 Aug at 15:00, 40 min before coring 7 Long Meadow has finished.',
  ],
  [
    said('noRefill', ['dress'], { by: 0.8 }),
    'Dresser lacks 0.8 t of sand for dressing 7 Long Meadow on Mon 10 Aug at 15:00: no load brings it.',
  ],
  [
    said('stockGone', ['load'], { by: 1.2 }),
    'The bay lacks 1.2 t for loading sand for 7 Long Meadow on Mon 10 Aug at 15:00.',
  ],
  [
    said('tinesGone', ['core'], { by: 0.25 }),
    'There are no sharp tines left for coring 7 Long Meadow on Mon 10 Aug at 15:00: 0.25 sets missing by then.',
  ],
  [
    said('noTravel', ['set', 'core'], { by: 3 }),
    'Ann lacks 3 min for the way to coring 7 Long Meadow on Mon 10 Aug at 15:00.',
  ],
  [
    said('breakMissed', ['move'], { by: 6 }),
    'Ann or Bob has a break cut short by 6 min, in the window that begins on Mon 10 Aug at 15:00.',
  ],
  [
    said('noSetUp', ['home'], { by: 15 }),
    'Corer goes to work on Mon 10 Aug at 15:00 without its 15 min of setting up that day.',
  ],
  [
    said('draggedBeforeDry', ['dress', 'drag'], { by: 1 }),
    'Dragging in 7 Long Meadow starts on Mon 10 Aug at 15:00, 1 min before the sand is dry.',
  ],
  [
    said('notAccountedFor', [], { at: null, by: 1 }),
    '7 Long Meadow is neither planned nor listed once as left out.',
  ],
  [
    said('notAccountedFor', ['core'], { at: null, by: 1 }),
    '7 Long Meadow is planned and listed as left out as well.',
  ],
  [
    said('figureWrong', [], { at: null, green: null, by: 0.3 }),
    'A figure that the plan states is off by 0.3: its tasks say otherwise.',
  ],
]

describe('a broken rule in words', () => {
  for (const [words, wanted] of WORDED) it(`reads: ${wanted}`, () => expect(words).toBe(wanted))

  it('is one sentence for every rule, with the figure or the name in it', () => {
    for (const rule of RULES) {
      const words = said(rule, rule === 'unknownId' ? ['ghost'] : ['core', 'move'])
      expect(words, rule).toMatch(/^\p{Lu}|^\d/u)
      expect(words, rule).toMatch(/[^.]\.$/u)
      expect(words, rule).toMatch(/40|7 Long Meadow|ghost/u)
      expect(words, rule).not.toMatch(/undefined|null|NaN|no green/u)
    }
  })

  it('still reads when the plan has no such task', () => {
    for (const rule of RULES) expect(said(rule, ['gone']), rule).not.toMatch(/undefined|null|NaN/u)
  })
})

describe('why a green is left out', () => {
  const why = (
    reason: (typeof UNPLANNED_REASONS)[number],
    facts: Readonly<Record<string, unknown>>,
    names = NAMES,
  ): string => unplannedSentence({ green: 'g7', reason, facts: { ...facts } }, names)

  it('gives the figures that it knows', () => {
    expect(why('sandShort', { needT: 2.3, availableT: 1.1 })).toBe(
      '7 Long Meadow is left out: there is not enough sand (it takes 2.3 t; 1.1 t can be had).',
    )
    expect(why('tinesShort', { needSets: 1, availableSets: 0.4 })).toBe(
      '7 Long Meadow is left out: there are not enough tines (it wears out 1 set; 0.4 sets can be had for it).',
    )
    expect(why('noWindow', { needMin: 250, longestWindowMin: 90 })).toBe(
      '7 Long Meadow is left out: no stretch of dry, light, workable hours is long enough to open and finish it (at least 4 h 10 min of work; the longest dry window is 1 h 30 min).',
    )
    expect(why('noSkill', { operation: 'dragIn', trained: 1, needed: 2 })).toBe(
      '7 Long Meadow is left out: too few people are trained for dragging in (2 needed, 1 trained).',
    )
    expect(why('noMachine', { operation: 'core' })).toBe('7 Long Meadow is left out: no machine for coring.')
  })

  it('follows the units of the club', () => {
    // 250 mm is 9.84 in; 200 mm is 7.87 in (25.4 mm to the inch).
    const imperial = { ...NAMES, units: IMPERIAL }
    expect(why('servicesNotLocated', { depthMm: 250, deepFromMm: 200, notLocated: [] }, imperial)).toBe(
      '7 Long Meadow is left out: locate the services under it first (tined 9.84 in deep; services count from 7.87 in).',
    )
  })

  it('is one sentence for every reason, also with no facts', () => {
    for (const reason of UNPLANNED_REASONS) {
      expect(why(reason, {}), reason).toMatch(/^7 Long Meadow is left out: [^.]+\.$/u)
    }
  })
})
