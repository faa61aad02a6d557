import { BREAK_REASONS } from './break-reasons.ts'
import { CAUTIONS_DEFER } from './cautions.ts'
import type { DaySheet } from './day-sheet.ts'
import { FACE } from './drawing.ts'
import { escapeMarkup } from './drawing-text.ts'
import type { SheetVisit } from './sheet/visits.ts'
import { dayHeading } from './times.ts'

/** Print only: black on white, A4, one page a post. Boxes are drawn by borders, so that they print without background colours. */
const CSS = `
@page{size:A4;margin:9mm 14mm}
.day-sheet,.day-sheet *{box-sizing:border-box;margin:0;padding:0}
.day-sheet{color:#000;background:#fff;font:10.5pt/1.25 ${FACE};font-variant-numeric:tabular-nums;break-after:page;max-width:182mm;margin:0 auto}
.day-sheet:last-child{break-after:auto}
.day-sheet header{display:flex;justify-content:space-between;align-items:flex-end;border-bottom:1.5pt solid #000;padding-bottom:2mm}
.day-sheet h1{font-size:22pt;line-height:1.05;font-weight:700}
.day-sheet .safe{text-align:right}
.day-sheet .safe b{display:block;font-size:26pt;line-height:1}
.day-sheet .facts{margin:2mm 0;display:grid;gap:.6mm}
.day-sheet table{width:100%;border-collapse:collapse;margin:0 0 2mm}
.day-sheet th{text-align:left;font-weight:400;font-size:9pt;border-bottom:.75pt solid #000;padding:1mm 2mm 1mm 0}
.day-sheet td{border-bottom:.4pt solid #777;padding:.75mm 2mm .75mm 0;vertical-align:top}
.day-sheet tr{break-inside:avoid}
.day-sheet .clock{white-space:nowrap;width:26mm}
.day-sheet .clock b{font-size:12pt}
.day-sheet .place{width:42mm;font-size:12pt}
.day-sheet .place b{display:inline-block;min-width:8mm}
.day-sheet .step{display:inline-block;white-space:nowrap;margin-right:4mm}
.day-sheet .box{display:inline-block;width:4mm;height:4mm;border:1pt solid #000;margin-right:1.6mm;vertical-align:-.5mm}
.day-sheet .broken{break-inside:avoid;margin-bottom:1.5mm}
.day-sheet .broken th{font-size:8pt;line-height:1;padding:.5mm 2mm .5mm 0;border-bottom:0;white-space:nowrap}
.day-sheet .broken th:first-child{width:100%}
.day-sheet .broken td{height:6mm;padding:0 2mm .5mm 0;vertical-align:bottom}
.day-sheet .broken .at{padding-right:8mm}
.day-sheet footer{border-top:1.5pt solid #000;padding-top:2mm;font-size:8pt;line-height:1.2;break-inside:avoid}
.day-sheet footer ul{list-style:none;columns:2;column-gap:6mm;margin-bottom:1.5mm}
.day-sheet footer li{break-inside:avoid;margin-bottom:1mm}
`.trim()

const e = escapeMarkup

const visitRow = (visit: SheetVisit): string =>
  [
    '<tr>',
    `<td class="clock"><b>${e(visit.from)}</b> to ${e(visit.to)}</td>`,
    `<td class="place"><b>${e(visit.hole)}</b>${e(visit.place)}</td>`,
    `<td>${visit.steps.map((step) => `<span class="step" data-id="${e(step.id)}"><span class="box"></span>${e(step.todo)}</span>`).join(' ')}</td>`,
    `<td>${e(visit.machine)}</td>`,
    '</tr>',
  ].join('')

const fact = (word: string, text: string): string => `<p><b>${e(word)}</b> ${e(text)}</p>`

const facts = (sheet: DaySheet): string =>
  [
    fact('Machines', sheet.machines.join(', ')),
    ...sheet.settings.flatMap(({ greens, lines }) => lines.map((line) => fact('Set', `${line} (${greens})`))),
    ...(sheet.sand.length > 0
      ? [fact('Sand, likely', sheet.sand.map(({ place, words }) => `${place} ${words}`).join('; '))]
      : []),
    ...(sheet.stops.length > 0 ? [fact('Ends the work', sheet.stops.join('; '))] : []),
    ...(sheet.breaks.length > 0 ? [fact('Break', sheet.breaks.join('; '))] : []),
  ].join('')

const safeStart = (sheet: DaySheet): string =>
  sheet.lastSafeStart === null
    ? '<p class="safe">no green is opened today</p>'
    : `<p class="safe">last safe start<b>${e(sheet.lastSafeStart)}</b></p>`

/** Steps that one person breaks off on a day and writes down: a second is seldom, a third goes on the back. */
const BREAK_ROWS = 2

const BROKEN_OFF = [
  '<table class="broken"><thead><tr><th><b>Broken off</b>: where and what</th><th class="at">when</th>',
  ...BREAK_REASONS.map(({ name }) => `<th>${e(name)}</th>`),
  '</tr></thead><tbody>',
  `<tr><td></td><td></td>${'<td><span class="box"></span></td>'.repeat(BREAK_REASONS.length)}</tr>`.repeat(
    BREAK_ROWS,
  ),
  '</tbody></table>',
].join('')

const cautions = (sheet: DaySheet): string =>
  [
    '<footer><ul>',
    ...sheet.cautions.map(
      (caution) =>
        `<li><b>${e(caution.title)}.</b> ${e(caution.sentence)} Follow ${e(caution.defersTo)}.</li>`,
    ),
    `</ul><p>${e(CAUTIONS_DEFER)}</p></footer>`,
  ].join('')

/** One sheet as an HTML fragment; the page that holds it needs `DAY_SHEET_CSS`. */
export const daySheetFragment = (sheet: DaySheet): string =>
  [
    `<section class="day-sheet" data-person="${e(sheet.personId)}">`,
    `<header><div><h1>${e(sheet.person)}</h1><p>${e(dayHeading(sheet.date))}, ${e(sheet.shift)}, ${e(sheet.course)}</p></div>${safeStart(sheet)}</header>`,
    `<div class="facts">${facts(sheet)}</div>`,
    '<table><thead><tr><th>when</th><th>where</th><th>what</th><th>with</th></tr></thead><tbody>',
    ...sheet.visits.map(visitRow),
    '</tbody></table>',
    BROKEN_OFF,
    cautions(sheet),
    '</section>',
  ].join('')

/** The style sheet of day sheets, on screen and on paper. */
export const DAY_SHEET_CSS = CSS

/** A whole printable page of day sheets, one post a page. */
export const daySheetsHtml = (sheets: readonly DaySheet[]): string =>
  [
    '<!doctype html><html lang="en"><head><meta charset="utf-8">',
    `<title>${e(sheets[0] === undefined ? 'Day sheets' : `Day sheets, ${dayHeading(sheets[0].date)}`)}</title>`,
    `<style>body{margin:0;background:#fff}${CSS}</style></head><body>`,
    ...sheets.map(daySheetFragment),
    '</body></html>',
  ].join('')
