import { describe, expect, it } from 'vitest'
import type { Plan } from '@swardwright/engine'
import {
  KINDS,
  fold,
  initialState,
  momentFromMs,
  uuidV7,
  type BodyOf,
  type Entry,
  type KindName,
} from '@swardwright/journal'
import { course, plan } from '../fixtures/two-greens.ts'
import type { MembersInput } from './green-state.ts'
import { MEMBERS_NOT_FOUND, membersHtml } from './members-html.ts'
import { comingBack } from './coming-back.ts'
import { membersPage } from './members-page.ts'

/** Both greens: <Dell> (hole 1) on 11 August from 05:20 to 14:00, the practice green on the 12th. Summer time is an hour ahead of UTC. */
const settled: Plan = {
  ...plan,
  openings: [
    {
      green: 'g1',
      opened: '2026-08-11T05:20:00+01:00',
      cleared: null,
      dressed: null,
      finished: '2026-08-11T14:00:00+01:00',
    },
    {
      green: 'g2',
      opened: '2026-08-12T06:10:00+01:00',
      cleared: null,
      dressed: null,
      finished: '2026-08-12T12:00:00+01:00',
    },
  ],
}

type Told = { readonly [K in KindName]: readonly [K, BodyOf<K>, string] }[KindName]

const entryOf = ([kind, body, at]: Told, index: number): Entry => ({
  id: uuidV7({ nowMs: Date.parse(at), random: new Uint8Array(10).fill(index) }),
  course: 'c',
  device: 'd',
  author: "Ann O'Dea",
  at: momentFromMs(Date.parse(at)),
  recordedAt: momentFromMs(Date.parse(at)),
  kind,
  version: KINDS[kind].version,
  body: { ...body },
})

const SETTLED: Told = ['planSettled', { plan: settled }, '2026-08-09T18:00:00+01:00']

/** What is known at a moment, from what was told. No weather is known: back in 7 to 14 days. */
const inputAt = (moment: string, told: readonly Told[]): MembersInput => {
  const { facts } = fold(initialState, told.map(entryOf))
  return { course, facts, weather: null, nowMs: Date.parse(moment) }
}

const at = (moment: string, ...told: readonly Told[]) => membersPage(inputAt(moment, told))

const words = (page: ReturnType<typeof membersPage>) =>
  page.greens.map(({ called, word, told }) => [called, word, told])

describe('the members’ page', () => {
  it('says that all greens are in play while nothing is settled, and nothing of what or why', () => {
    const page = at('2026-08-10T12:00:00+01:00')
    expect(page.headline).toBe('All greens are in play.')
    expect([page.what, page.why, page.days, page.updatedAt]).toEqual([null, null, [], null])
    expect(words(page)).toEqual([
      ['1 <Dell>', 'In play', ''],
      ['Practice', 'In play', ''],
    ])
  })

  it('tells days ahead, and what is done and why, in two sentences', () => {
    const page = at('2026-08-10T12:00:00+01:00', SETTLED)
    // 11 August + 7 = 18, + 14 = 25; 12 August + 7 = 19, + 14 = 26.
    expect(words(page)).toEqual([
      ['1 <Dell>', 'In play', 'work on Tue 11 Aug; back 18 to 25 Aug'],
      ['Practice', 'In play', 'work on Wed 12 Aug; back 19 to 26 Aug'],
    ])
    expect(page.days.map(({ heading, words }) => [heading, words])).toEqual([
      ['Tue 11 Aug', 'green 1'],
      ['Wed 12 Aug', 'Practice'],
    ])
    expect(page.what).toBe('We take small cores out of the greens and work sand in.')
    expect(page.why).toMatch(/^Old grass builds up .*\.$/u)
    expect(page.updated).toBe('Last updated Sun 9 Aug 18:00')
  })

  it('goes by the plan where nobody writes anything down', () => {
    expect(at('2026-08-11T10:00:00+01:00', SETTLED).headline).toBe('1 green closed for work and 1 in play.')
    const after = at('2026-08-11T15:00:00+01:00', SETTLED)
    expect(words(after)[0]).toEqual(['1 <Dell>', 'Recovering', 'finished Tue 11 Aug; back 18 to 25 Aug'])
    expect(after.days[0]?.words).toBe('green 1, done')
  })

  it('goes by the diary where it is kept: a green done late counts from then, one not done is put off', () => {
    const begun: Told = [
      'taskStarted',
      { green: 'g1', operation: 'core', pass: 1 },
      '2026-08-11T06:00:00+01:00',
    ]
    const still = at('2026-08-11T16:00:00+01:00', SETTLED, begun)
    expect(words(still)[0]).toEqual(['1 <Dell>', 'Closed for work today', 'back 18 to 25 Aug'])
    const next = at('2026-08-12T09:00:00+01:00', SETTLED, begun)
    expect(words(next)[0]).toEqual(['1 <Dell>', 'Closed for work', 'begun Tue 11 Aug; back 18 to 25 Aug'])
    const done: Told = ['greenFinished', { green: 'g1' }, '2026-08-12T09:30:00+01:00']
    expect(words(at('2026-08-12T10:00:00+01:00', SETTLED, begun, done))[0]).toEqual([
      '1 <Dell>',
      'Recovering',
      'finished Wed 12 Aug; back 19 to 26 Aug',
    ])
    const other: Told = [
      'taskFinished',
      { green: 'g2', operation: 'core', pass: 1 },
      '2026-08-11T07:00:00+01:00',
    ]
    const putOff = at('2026-08-12T09:00:00+01:00', SETTLED, other)
    expect(words(putOff)[0]).toEqual([
      '1 <Dell>',
      'In play',
      'its work was put off; the new day will stand here',
    ])
    expect(putOff.days[0]?.words).toBe('green 1; put off: 1')
  })

  it('shows what the manager set: a temporary green, shut, and in play again before its time', () => {
    const temporary: Told = ['playChanged', { green: 'g1', play: 'onTemporary' }, '2026-08-11T16:00:00+01:00']
    const shut: Told = ['playChanged', { green: 'g2', play: 'shut' }, '2026-08-11T16:00:01+01:00']
    const page = at('2026-08-11T17:00:00+01:00', SETTLED, temporary, shut)
    expect(page.headline).toBe('1 green closed and 1 on a temporary green.')
    expect(words(page)[0]?.[1]).toBe('Temporary green')
    const again: Told = ['playChanged', { green: 'g1', play: 'inPlay' }, '2026-08-15T08:00:00+01:00']
    const later = at('2026-08-16T08:00:00+01:00', SETTLED, temporary, again)
    expect(words(later)[0]).toEqual(['1 <Dell>', 'In play', 'renovated Tue 11 Aug'])
  })

  it('still tells a green as recovering when another plan, without it, was settled since', () => {
    const done: Told = ['greenFinished', { green: 'g1' }, '2026-08-11T14:00:00+01:00']
    const [, second] = settled.openings
    const rest: Plan = { ...settled, start: '2026-08-13', openings: second === undefined ? [] : [second] }
    const again: Told = ['planSettled', { plan: rest }, '2026-08-12T18:00:00+01:00']
    expect(words(at('2026-08-14T12:00:00+01:00', SETTLED, done, again))[0]).toEqual([
      '1 <Dell>',
      'Recovering',
      'finished Tue 11 Aug; back 18 to 25 Aug',
    ])
    expect(at('2026-08-27T12:00:00+01:00', SETTLED, done, again).greens[0]?.state).toBe('open')
  })

  it('counts a green in play once the last day of its range has passed', () => {
    expect(at('2026-08-25T12:00:00+01:00', SETTLED).greens[0]?.state).toBe('recovering')
    expect(at('2026-08-26T12:00:00+01:00', SETTLED).greens[0]?.state).toBe('open')
  })

  it('shows the manager’s latest word to members, and none that was for others', () => {
    const notice: Told = [
      'noticeSent',
      { audience: 'members', way: 'page', words: 'Bear with us & enjoy <the> temporaries' },
      '2026-08-10T08:00:00+01:00',
    ]
    const other: Told = [
      'noticeSent',
      { audience: 'supplier', way: 'email', words: 'Two more loads' },
      '2026-08-10T09:00:00+01:00',
    ]
    const page = at('2026-08-10T12:00:00+01:00', notice, other)
    expect(page.notice).toEqual({ words: 'Bear with us & enjoy <the> temporaries', day: 'Mon 10 Aug' })
    expect(page.updated).toBe('Last updated Mon 10 Aug 08:00')
    expect(membersHtml(page, null)).toContain('Bear with us &amp; enjoy &lt;the&gt; temporaries')
  })

  it('names nobody of the crew and no machine, though plan and diary are full of them', () => {
    const problem: Told = [
      'problemReported',
      { problem: 'other', words: 'Ring Bob' },
      '2026-08-11T06:00:00+01:00',
    ]
    const note: Told = ['noteWritten', { words: 'Cy is away' }, '2026-08-11T06:00:01+01:00']
    const page = at('2026-08-11T10:00:00+01:00', SETTLED, problem, note)
    const html = membersHtml(page, 'https://shed.example/greens/x')
    for (const name of ["Ann O'Dea", 'Ann', 'Bob', 'Cy is', 'Corer', 'Dresser'])
      expect(`${html}${JSON.stringify(page)}`).not.toContain(name)
    expect(html).toContain('&lt;Dell&gt;')
    expect(html).not.toMatch(/<script|<Dell>/u)
  })
})

describe('the greens after the work', () => {
  const back = (moment: string, ...told: readonly Told[]) => comingBack(inputAt(moment, told))

  it('says in one text for the secretary when the first and the last are expected back', () => {
    // 11 August + 7 = 18, + 14 = 25; 12 August + 7 = 19, + 14 = 26.
    expect(back('2026-08-13T09:00:00+01:00', SETTLED).text).toBe(
      '2 greens recovering. The first is expected back from Tue 18 Aug, the last by Wed 26 Aug.',
    )
    expect(back('2026-08-18T09:00:00+01:00', SETTLED).text).toBe(
      '2 greens recovering. The first may be back any day, the last by Wed 26 Aug.',
    )
  })

  it('says one range where one green is waited for, and none once all are back', () => {
    const again: Told = ['playChanged', { green: 'g1', play: 'inPlay' }, '2026-08-20T08:00:00+01:00']
    expect(back('2026-08-20T09:00:00+01:00', SETTLED, again).text).toBe(
      '1 green recovering and 1 in play. Expected back 19 to 26 Aug.',
    )
    expect(back('2026-08-27T09:00:00+01:00', SETTLED).text).toBe('All greens are in play.')
  })

  it('tells each green with its day and its range, and says of one that the diary leaves open that it is not finished', () => {
    const done: Told = ['greenFinished', { green: 'g1' }, '2026-08-11T14:00:00+01:00']
    const step: Told = [
      'taskFinished',
      { green: 'g1', operation: 'core', pass: 1 },
      '2026-08-12T07:00:00+01:00',
    ]
    expect(back('2026-08-13T09:00:00+01:00', SETTLED, done, step).greens).toEqual([
      {
        id: 'g1',
        called: '1 <Dell>',
        state: 'recovering',
        word: 'Recovering',
        finished: '2026-08-11',
        back: 'back 18 to 25 Aug',
      },
      {
        id: 'g2',
        called: 'Practice',
        state: 'putOff',
        word: 'Not finished',
        finished: null,
        back: '',
      },
    ])
  })
})

describe('an address that leads nowhere', () => {
  it('says so without a word of any club', () => {
    expect(MEMBERS_NOT_FOUND).toContain('Nothing here')
    expect(MEMBERS_NOT_FOUND).not.toContain(course.name)
  })
})
