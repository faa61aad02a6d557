import { describe, expect, it } from 'vitest'
import { BREAK_REASONS } from '../break-reasons.ts'
import { daySheets } from '../day-sheet.ts'
import { daySheetsHtml } from '../day-sheet-html.ts'
import { course, plan } from '../fixtures/two-greens.ts'

/** Every figure below is read off `two-greens` by hand. */
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
    expect(html.match(/class="step"[^>]*><span class="box"/gu)).toHaveLength(5)
    expect(html.match(/<footer>/gu)).toHaveLength(2)
    expect(html).toContain('break-after:page')
  })

  it('has room for two steps broken off on each post: where, when, and a box for each reason that a phone offers', () => {
    const rooms = html.match(/<table class="broken">.*?<\/table>/gu) ?? []
    expect(rooms).toHaveLength(2)
    for (const room of rooms) {
      for (const { name } of BREAK_REASONS) expect(room).toContain(`<th>${name}</th>`)
      const rows = [...room.matchAll(/<tr><td>.*?<\/tr>/gu)].map(([row]) => row)
      expect(rows.map((row) => row.match(/class="box"/gu)?.length)).toEqual([5, 5])
    }
  })

  it('escapes every name', () => {
    expect(html).toContain('&lt;Dell&gt;')
    expect(html).not.toContain('<Dell>')
    expect(html).toContain('Ann O&#39;Dea')
    expect(html).toContain('Two &amp; Three')
  })
})
