import { readFileSync } from 'node:fs'
import {
  readCourse,
  type Because,
  type CaughtGreen,
  type FactProblem,
  type PlanChange,
  type Replanned,
} from '@swardwright/engine'
import { describe, expect, it } from 'vitest'
import {
  bailWord,
  caughtSentence,
  changeSentence,
  costSentence,
  situationErrorWords,
} from './replan-words.ts'

const read = readCourse(readFileSync(new URL('../../examples/demo-course.geojson', import.meta.url), 'utf8'))
if (!read.ok) throw new Error('the demo course does not read')
const { course } = read.value

const BECAUSE: Because = { kind: 'rain', fact: 0 }
const FROM = '2026-08-10T09:00:00+01:00'
const TO = '2026-08-10T10:30:00+01:00'
const STEP = {
  green: 'g02',
  operation: 'scarify',
  pass: 1,
  load: null,
  at: TO,
  because: BECAUSE,
} as const
const GREEN = { green: 'g02', because: BECAUSE } as const

const CHANGES: Readonly<Record<PlanChange['kind'], readonly [PlanChange, string]>> = {
  greenMoved: [
    { kind: 'greenMoved', ...GREEN, from: FROM, to: TO },
    'Larkrise is opened Mon 10 Aug 10:30 instead of 09:00, because of the rain.',
  ],
  greenPutOff: [
    { kind: 'greenPutOff', ...GREEN, from: FROM, to: '2026-08-11T07:15:00+01:00' },
    'Larkrise is put off to Tue 11 Aug 07:15 from Mon 10 Aug 09:00, because of the rain.',
  ],
  greenLeftOut: [
    { kind: 'greenLeftOut', ...GREEN, from: FROM },
    'Larkrise, planned for Mon 10 Aug 09:00, is left out, because of the rain.',
  ],
  greenTakenIn: [{ kind: 'greenTakenIn', ...GREEN, to: TO }, 'Larkrise is taken in, Mon 10 Aug 10:30.'],
  finishMoved: [
    { kind: 'finishMoved', ...GREEN, from: FROM, to: TO },
    'Larkrise is finished Mon 10 Aug 10:30 instead of 09:00, because of the rain.',
  ],
  machineChanged: [
    { kind: 'machineChanged', ...STEP, from: 'scarifier-1', to: 'scarifier-2' },
    'Scarifying on Larkrise Mon 10 Aug 10:30 goes from Scarifier, red tape to Scarifier, blue tape, because of the rain.',
  ],
  peopleChanged: [
    { kind: 'peopleChanged', ...STEP, from: ['rafe'], to: ['isla'] },
    'Scarifying on Larkrise Mon 10 Aug 10:30 goes from Rafe to Isla, because of the rain.',
  ],
  pinNotKept: [
    { kind: 'pinNotKept', ...GREEN, wanted: FROM, got: TO },
    "The pin on Larkrise (Mon 10 Aug 09:00) can't be kept: it comes Mon 10 Aug 10:30; kept, it would break a rule or leave a green open.",
  ],
}

describe('a change of a plan made again', () => {
  it.each(Object.entries(CHANGES))('%s is one sentence with names and clock times', (_, [change, words]) => {
    expect(changeSentence(change, course)).toBe(words)
  })

  it('names both days where a green is opened on another', () => {
    const to = '2026-08-11T10:30:00+01:00'
    expect(changeSentence({ kind: 'greenMoved', ...GREEN, from: FROM, to }, course)).toBe(
      'Larkrise is opened Tue 11 Aug 10:30 instead of Mon 10 Aug 09:00, because of the rain.',
    )
  })

  it('says where a green can not be finished, and where a pin finds no place', () => {
    expect(changeSentence({ kind: 'finishMoved', ...GREEN, from: FROM, to: null }, course)).toBe(
      "Larkrise can't be finished within the days planned (it was to be Mon 10 Aug 09:00), because of the rain.",
    )
    expect(changeSentence({ kind: 'pinNotKept', ...GREEN, wanted: FROM, got: null }, course)).toContain(
      'it finds no place',
    )
  })

  const KINDS: Readonly<Record<Because['kind'], true>> = {
    started: true,
    finished: true,
    stopped: true,
    late: true,
    machineOut: true,
    personOut: true,
    rain: true,
    dry: true,
    slower: true,
    sandShort: true,
    tinesShort: true,
    deliveryLate: true,
    pinned: true,
    skipped: true,
    forecast: true,
    running: true,
    follows: true,
  }

  it.each(Object.keys(KINDS))('gives its cause in words, not by the code: %s', (kind) => {
    const because = { kind: kind as Because['kind'], fact: null }
    const sentence = changeSentence({ kind: 'greenLeftOut', green: 'g02', from: FROM, because }, course)
    expect(sentence).toMatch(/, because [a-z ]{8,}\.$/u)
    expect(sentence).not.toMatch(/[a-z][A-Z]|undefined/u)
  })
})

describe('what a plan made again costs', () => {
  const NOTHING: Replanned['cost'] = {
    tasksMoved: 0,
    minutesMoved: 0,
    points: 0,
    greensPutOff: 0,
    greensLeftOut: 0,
    greensCaught: 0,
    finishLaterMin: 0,
    moreOvertimeMin: 0,
    moreShutGreenDays: 0,
    moreFixtureClashes: 0,
  }

  it('names what it costs, and leaves out what it costs nothing of', () => {
    expect(costSentence(NOTHING)).toBe('The last finish is no later.')
    expect(
      costSentence({ ...NOTHING, tasksMoved: 25, greensPutOff: 1, finishLaterMin: 90, moreOvertimeMin: -85 }),
    ).toBe(
      '25 steps go to other hands; 1 green is put off; the last finish is 1 h 30 min later; 1 h 25 min less overtime.',
    )
    // A green that finds a place again is told among the changes.
    expect(costSentence({ ...NOTHING, greensLeftOut: -1 })).toBe('The last finish is no later.')
    expect(costSentence({ ...NOTHING, greensLeftOut: 2 })).toBe(
      '2 greens are left out; the last finish is no later.',
    )
  })
})

describe('a green that could not be saved', () => {
  const caught = (reason: CaughtGreen['reason'], byMin = 75): string =>
    caughtSentence({ green: 'g02', state: 'dressed', at: TO, reason, byMin }, course)
  const REASONS: Readonly<Record<CaughtGreen['reason'], string>> = {
    already: 'it was before this plan was made.',
    tooLittleTime: 'with everybody and every machine on it, it would still be 1 h 15 min too late.',
    sandTooLate: 'the sand that it still needs comes too late.',
    notAllTogether: 'each of the greens in work could be saved, but not all of them.',
    cannotBeDone: "a step of it can't be done any more within the days planned.",
  }

  it.each(Object.entries(REASONS))('%s is one sentence', (reason, words) => {
    expect(caught(reason as CaughtGreen['reason'])).toBe(
      `Larkrise is caught Mon 10 Aug 10:30, dressed, not dragged in: ${words}`,
    )
  })

  it('says nothing of the minutes where only that it is too late was proven', () => {
    expect(caught('tooLittleTime', 0)).toMatch(
      /: with everybody and every machine on it, it would still be too late\.$/u,
    )
  })
})

describe('a fact that cannot be used', () => {
  const PROBLEMS: Readonly<Record<FactProblem, string>> = {
    unknown: "facts[2] (rain): from is 'x', which there is not; it can be a, b",
    afterNow: 'facts[2] (rain): from is x, after now (a); what has not happened yet is no fact',
    endsBeforeStart: 'facts[2] (rain): from is x; it must be after a',
    outsideDays: "facts[2] (rain): from is 'x', outside the days of the plan (a to b)",
    missing: 'facts[2] (rain): from is missing; give a or b',
    tooMuch: "facts[2] (rain): from is 'x'; give either a or b, not both",
    inWork: "facts[2] (rain): from is 'x', which is in work or done; it can't be left out any more",
  }

  it.each(Object.entries(PROBLEMS))('%s is one sentence with the fact and the field', (problem, words) => {
    const error = {
      type: 'badFact',
      index: 2,
      kind: 'rain',
      field: 'from',
      problem: problem as FactProblem,
      accepted: ['a', 'b'],
      received: 'x',
    } as const
    expect(situationErrorWords(error)).toBe(words)
  })
})

describe('the word of the bail-out', () => {
  const green = {
    green: 'g02',
    state: 'opened',
    over: FROM,
    notDone: [],
    mode: 'clearOnly',
    stateAtRain: 'cleared',
  } as const

  it('says to clear where the clearing ends before the rain', () => {
    expect(bailWord(green)).toBe('clear only')
  })

  it('promises no clearing that the rain will cut short', () => {
    expect(bailWord({ ...green, stateAtRain: 'opened' })).toBe('clear what you can')
  })
})
