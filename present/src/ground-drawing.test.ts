import { planPasses, sandRuns, type PassSettings, type Polygon } from '@swardwright/engine'
import { describe, expect, it } from 'vitest'
import { partsOf } from './drawing.ts'
import { toSvgString } from './drawing-text.ts'
import { groundDrawing } from './ground-drawing.ts'

const settings: PassSettings = {
  widthM: 1.5,
  overlapM: 0,
  speedMPerS: 1,
  turnS: 10,
  turnRadiusM: 0,
  turnStyle: 'lift',
  laps: 0,
  order: 'backAndForth',
}

const green: Polygon = {
  outer: [
    { x: 0, y: 0 },
    { x: 15, y: 0 },
    { x: 15, y: 20 },
    { x: 0, y: 20 },
  ],
  holes: [],
}
const passes = (headingDeg: number) => ({ runs: planPasses(green, settings, headingDeg), widthM: 1.5 })

describe('the drawing of a green with its runs', () => {
  it('shows each run as a part that tells its number and length: ten runs of 20 m on 15 x 20 m at 1.5 m', () => {
    const runs = partsOf(groundDrawing({ name: 'Seven', polygon: green, passes: [passes(0)] }), 'run')
    expect(runs).toHaveLength(10)
    expect(runs[0]?.attributes['aria-label']).toBe('run 1: 20 m')
    expect(runs.map((run) => run.attributes['data-id'])[9]).toBe('1.10')
  })

  it('draws a second pass in another stroke, and names both headings by the clock', () => {
    const drawing = groundDrawing({ name: 'Seven', polygon: green, passes: [passes(0), passes(60)] })
    const text = toSvgString(drawing, 'print')
    expect(text).toContain('First pass 12 to 6 (0°): 10 runs')
    expect(text).toContain('Second pass 2 to 8 (60°)')
    const dashed = partsOf(drawing, 'run').filter((run) => toSvgString(run).includes('stroke-dasharray'))
    expect(dashed.every((run) => String(run.attributes['data-id']).startsWith('2.'))).toBe(true)
    expect(dashed).toHaveLength(passes(60).runs.runs.length)
  })

  it('gives neighbouring dresser loads different dashes and marks where each starts', () => {
    const pass = passes(0)
    const split = sandRuns(pass.runs.runs, { boutM: 1.5, rateKgPerM2: 2, hopperKg: 200 })
    if (!split.ok) throw new Error(split.error.type)
    const drawing = groundDrawing({ name: 'Seven', polygon: green, passes: [pass], loads: split.value.loads })
    expect(partsOf(drawing, 'load').map((load) => load.attributes['aria-label'])[0]).toBe(
      'load 1, 180 kg, runs 1 to 3',
    )
    const dashes = partsOf(drawing, 'run').map(
      (run) => /stroke-dasharray="([^"]+)"/u.exec(toSvgString(run))?.[1],
    )
    expect(new Set(dashes).size).toBe(4)
  })

  it('says when the outline is only an ellipse, and hatches an island to keep clear', () => {
    const hole = [
      { x: 5, y: 5 },
      { x: 5, y: 7 },
      { x: 7, y: 7 },
    ]
    const drawing = groundDrawing({
      name: 'Seven',
      polygon: { ...green, holes: [hole] },
      passes: [passes(0)],
      isApproximate: true,
    })
    expect(partsOf(drawing, 'island')).toHaveLength(1)
    expect(toSvgString(drawing)).toContain('ellipse of the same area')
    expect(toSvgString(drawing)).not.toMatch(/NaN|undefined|Infinity/u)
  })

  it('keeps everything on the sheet, north up: the northern edge lies above the southern', () => {
    const text = toSvgString(groundDrawing({ name: 'Seven', polygon: green, passes: [passes(0)] }))
    const outline = /d="M([\d.]+) ([\d.]+)L[^"]*" fill="none" stroke="var\(--leaf\)"/u.exec(text)
    // The first corner is the south-west one: left edge, low on the page.
    expect(Number(outline?.[1])).toBeLessThan(200)
    expect(Number(outline?.[2])).toBeGreaterThan(500)
  })
})
