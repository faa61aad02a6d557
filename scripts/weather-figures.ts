import { writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import {
  drySpells,
  fitClimate,
  generateDays,
  hoursOfDays,
  monthStatistics,
  yearRainMm,
  type DailyRecord,
  type MonthStatistics,
} from '@swardwright/engine'
import { DUBLIN_STATION, dublinText, NO_DUBLIN } from '../engine/src/weather/fixtures/records.ts'
import { readHistory } from '../engine/src/weather/history.ts'
import { serviceLayout } from '../engine/src/weather/history-map.ts'

/**
 * Real years against 200 generated ones: prints the table of docs/weather.md and draws its picture.
 * Run: node --conditions=swardwright-source --import tsx scripts/weather-figures.ts
 */
const PICTURE = fileURLToPath(new URL('../docs/pictures/weather-generator.svg', import.meta.url))
const TWO_CENTURIES = 73_050
const SEED = 1

const realRecord = (): DailyRecord => {
  const text = dublinText()
  const layout = text === undefined ? undefined : serviceLayout(text)
  const history = text === undefined || layout === undefined ? undefined : readHistory(text, layout)
  if (history === undefined || !history.ok) throw new Error(NO_DUBLIN)
  return history.value.record
}

type Reading = {
  readonly title: string
  readonly unit: string
  readonly of: (m: MonthStatistics) => number
  readonly spread: (m: MonthStatistics) => number
}

const PANELS: readonly Reading[] = [
  {
    title: 'Days of 1 mm or more',
    unit: 'days',
    of: (m) => m.wetDays.mean,
    spread: (m) => m.wetDays.betweenYears,
  },
  { title: 'Rain of the month', unit: 'mm', of: (m) => m.rainMm.mean, spread: (m) => m.rainMm.betweenYears },
  { title: 'Mean temperature', unit: 'C', of: (m) => m.meanC.mean, spread: (m) => m.meanC.betweenYears },
]

const WIDTH = 320
const HEIGHT = 200
const MARGIN = { left: 40, right: 10, top: 28, bottom: 24 }

/** One panel: bars of mean and one spread between years either side, real left of generated. */
const panel = (
  reading: Reading,
  real: readonly MonthStatistics[],
  made: readonly MonthStatistics[],
  at: number,
): string => {
  const most = Math.max(...[...real, ...made].map((m) => reading.of(m) + reading.spread(m)))
  const y = (value: number): number =>
    HEIGHT - MARGIN.bottom - (Math.max(0, value) / most) * (HEIGHT - MARGIN.top - MARGIN.bottom)
  const x = (month: number): number =>
    MARGIN.left + ((month - 0.5) / 12) * (WIDTH - MARGIN.left - MARGIN.right)
  const mark = (m: MonthStatistics, shift: number, colour: string): string => {
    const px = (x(m.month) + shift).toFixed(1)
    const [low, middle, high] = [
      reading.of(m) - reading.spread(m),
      reading.of(m),
      reading.of(m) + reading.spread(m),
    ].map((v) => y(v).toFixed(1))
    return `<line x1="${px}" x2="${px}" y1="${low}" y2="${high}" stroke="${colour}" stroke-width="2"/><circle cx="${px}" cy="${middle}" r="3" fill="${colour}"/>`
  }
  const letters = 'J F M A M J J A S O N D'
    .split(' ')
    .map(
      (letter, i) =>
        `<text x="${x(i + 1).toFixed(1)}" y="${HEIGHT - 8}" text-anchor="middle">${letter}</text>`,
    )
  const ticks = [0, 0.5, 1].map(
    (f) =>
      `<text x="${MARGIN.left - 6}" y="${(y(f * most) + 4).toFixed(1)}" text-anchor="end">${(f * most).toFixed(most < 25 ? 1 : 0)}</text>`,
  )
  const marks = real.flatMap((m, i) => [
    mark(m, -4, '#1f5f8b'),
    ...(made[i] === undefined ? [] : [mark(made[i], 4, '#b3541e')]),
  ])
  return `<g transform="translate(${at},0)"><text x="${MARGIN.left}" y="16">${reading.title}, ${reading.unit}</text>${letters.join('')}${ticks.join('')}${marks.join('')}</g>`
}

const table = (real: readonly MonthStatistics[], made: readonly MonthStatistics[]): string =>
  real
    .map((a, i) => {
      const b = made[i] ?? a
      const pair = (read: (m: MonthStatistics) => number, digits: number): string =>
        `${read(a).toFixed(digits)} / ${read(b).toFixed(digits)}`
      return `| ${[
        'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ')[i],
        pair((m) => m.wetDays.mean, 1),
        pair((m) => m.wetDays.betweenYears, 1),
        pair((m) => m.rainMm.mean, 0),
        pair((m) => m.rainMm.betweenYears, 0),
        pair((m) => m.minC, 1),
        pair((m) => m.maxC, 1),
        pair((m) => m.dailySpreadC, 1),
        pair((m) => m.meanC.betweenYears, 2),
      ].join(' | ')} |`
    })
    .join('\n')

const record = realRecord()
const begun = performance.now()
const climate = fitClimate(record, DUBLIN_STATION)
const thirty = generateDays(climate, 0, 10_957, SEED)
hoursOfDays(thirty, DUBLIN_STATION, { fromDay: 0, days: 10_957, seed: SEED })
const took = performance.now() - begun
const made = generateDays(climate, 0, TWO_CENTURIES, SEED)
const [a, b] = [monthStatistics(record), monthStatistics(made)]
console.info(table(a, b))
console.info('dry spells, real', drySpells(record), 'generated', drySpells(made))
console.info('rain of a year, real', yearRainMm(record), 'generated', yearRainMm(made))
console.info(`fit and 30 years of hours: ${(took / 1000).toFixed(2)} s`)
writeFileSync(
  PICTURE,
  `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH * PANELS.length} ${HEIGHT + 22}" font-family="sans-serif" font-size="11" fill="#222"><title>Real years against generated ones</title>${PANELS.map((reading, i) => panel(reading, a, b, i * WIDTH)).join('')}<text x="${MARGIN.left}" y="${HEIGHT + 14}">blue: Dublin Airport 1980-2025 (Met Éireann, met.ie, CC BY 4.0); rust: 200 generated years; bars: one spread between years either side</text></svg>\n`,
)
