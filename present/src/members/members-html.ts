import { FACE } from '../drawing.ts'
import { escapeMarkup } from '../drawing-text.ts'
import { qrCode } from '../qr-code.ts'
import { TOKENS, type TokenName } from '../tokens.ts'
import type { MembersGreen, MembersPage } from './members-page.ts'

const e = escapeMarkup

const STATE_COLOURS: Readonly<Record<MembersGreen['state'], TokenName>> = {
  open: 'leaf',
  planned: 'leaf',
  putOff: 'ochre',
  working: 'rust',
  recovering: 'ochre',
}

const colours = (twin: 'day' | 'night'): string =>
  [
    `.members{color:${TOKENS.ink[twin]};background:${TOKENS.paper[twin]}}`,
    `.members .quiet,.members th{color:${TOKENS.quiet[twin]}}`,
    `.members td,.members th,.members dt,.members dd{border-color:${TOKENS.rule[twin]}}`,
    ...Object.entries(STATE_COLOURS).map(
      ([state, token]) => `.members .s-${state}{color:${TOKENS[token][twin]}}`,
    ),
    `.members .s-onTemporary{color:${TOKENS.dusk[twin]}}`,
    `.members .s-shut{color:${TOKENS.rust[twin]}}`,
    `.members blockquote{border-color:${TOKENS.leaf[twin]}}`,
  ].join('')

/** Colours are written out, not named: browsers of old phones know no custom properties. */
const CSS = [
  `.members{font:18px/1.45 ${FACE};max-width:720px;margin:0 auto;padding:16px}`,
  '.members *{margin:0;padding:0;box-sizing:border-box}',
  '.members h1{font-size:28px;line-height:1.15}',
  '.members h2{font-size:20px;margin:24px 0 4px}',
  '.members p{margin:8px 0}',
  '.members .lead{font-size:22px;line-height:1.3}',
  '.members blockquote{border-left:4px solid;padding-left:12px;margin:16px 0;white-space:pre-line;overflow-wrap:anywhere}',
  '.members .quiet{font-size:16px}',
  '.members table{width:100%;border-collapse:collapse}',
  '.members th,.members td{text-align:left;vertical-align:top;padding:8px 12px 8px 0;border-bottom:1px solid;overflow-wrap:break-word}',
  '.members th{font-weight:400;font-size:16px}',
  '.members td b,.members .told{display:block}',
  '.members .told{font-size:16px}',
  '.members .hole{width:36px;font-weight:700}',
  '.members .day{white-space:nowrap;font-weight:700;width:1%}',
  '.members .code{display:none}',
  colours('day'),
  // On paper: black on white, the list in two columns, all of it on one sheet.
  '@page{size:A4;margin:11mm 14mm}',
  '@media print{',
  '.members{color:#000;background:#fff;max-width:none;padding:0;font-size:11pt;line-height:1.25}',
  '.members h1{font-size:22pt}.members .lead{font-size:14pt}.members h2{font-size:12pt;margin:4mm 0 1mm}',
  '.members p{margin:1.5mm 0}.members .quiet,.members th{font-size:9pt;color:#404040}',
  '.members th,.members td{padding:.9mm 3mm .9mm 0;border-color:#999;font-size:10pt}',
  '.members td b{display:inline}.members .told{display:inline;font-size:9pt}.members .told:before{content:" "}.members .told+.told:before{content:", "}',
  '.members [class^=s-]{color:#000}',
  '.members .many td{padding-top:.3mm;padding-bottom:.3mm;font-size:8.5pt}.members .many .told{font-size:8pt}',
  '.members .code{display:block;float:right;width:30mm;text-align:center;font-size:8pt}',
  '.members .code svg{display:block;width:30mm;height:30mm}',
  '}',
].join('')

/** Night only on screens, and only where the device wants it. */
const NIGHT = `@media screen and (prefers-color-scheme:dark){html{background:${TOKENS.paper.night}}${colours('night')}}`

const toldLines = (told: string): string =>
  told
    .split('; ')
    .filter((line) => line !== '')
    .map((line) => `<span class="told">${e(line)}</span>`)
    .join('')

const greenRow = ({ hole, name, state, play, word, told }: MembersGreen): string =>
  [
    '<tr>',
    `<td class="hole">${hole ?? ''}</td><td>${e(name)}</td>`,
    `<td><b class="s-${play ?? state}">${e(word)}</b>${toldLines(told)}</td>`,
    '</tr>',
  ].join('')

/** More greens than this are set smaller on paper, so that they stay on one sheet. */
const MANY_GREENS = 24

const code = (address: string): string => {
  const { size, path } = qrCode(address)
  return [
    '<div class="code">',
    `<svg viewBox="0 0 ${size} ${size}" role="img" aria-label="QR code of this page"><path d="${path}"/></svg>`,
    'This page on your phone</div>',
  ].join('')
}

const notice = ({ words, day }: NonNullable<MembersPage['notice']>): string =>
  `<blockquote><p>${e(words)}</p><p class="quiet">The course manager, ${e(day)}</p></blockquote>`

const days = (page: MembersPage): string =>
  page.days.length === 0
    ? ''
    : [
        '<h2>Days of work</h2><table><tbody>',
        ...page.days.map(
          ({ heading, words }) => `<tr><td class="day">${e(heading)}</td><td>${e(words)}</td></tr>`,
        ),
        '</tbody></table><p class="quiet">Rain can move a day.</p>',
      ].join('')

/** What the page says, without its heading, as a fragment for whatever holds it. */
export const membersFragment = (page: MembersPage): string =>
  [
    `<p class="lead">${e(page.headline)}</p>`,
    page.notice === null ? '' : notice(page.notice),
    page.what === null ? '' : `<p>${e(`${page.what} ${page.why ?? ''}`.trim())}</p>`,
    days(page),
    '<h2>Green by green</h2>',
    `<table${page.greens.length > MANY_GREENS ? ' class="many"' : ''}><thead><tr><th scope="col" colspan="2">Green</th><th scope="col">Now</th></tr></thead><tbody>`,
    ...page.greens.map(greenRow),
    '</tbody></table>',
    `<p class="quiet">${e(page.updated)}. Days ahead are what we expect, not a promise: grass and weather decide.</p>`,
  ].join('')

const documentOf = (title: string, css: string, body: string): string =>
  [
    '<!doctype html><html lang="en"><head><meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width,initial-scale=1">',
    '<meta name="robots" content="noindex,nofollow"><meta name="referrer" content="no-referrer">',
    `<title>${e(title)}</title><style>${css}</style></head><body>`,
    body,
    '</body></html>',
  ].join('')

/** The style sheet of the whole page, so that whoever serves it can name it as the only one allowed. */
export const MEMBERS_PAGE_CSS = `body{margin:0}html{background:${TOKENS.paper.day}}${CSS}${NIGHT}@media print{html{background:#fff}}`

/** The whole page: no script, nothing loaded from elsewhere. `address` is printed as a code where it is known. */
export const membersHtml = (page: MembersPage, address: string | null): string =>
  documentOf(
    `The greens, ${page.course}`,
    MEMBERS_PAGE_CSS,
    `<main class="members">${address === null ? '' : code(address)}<p class="quiet">${e(page.course)}</p><h1>The greens</h1>${membersFragment(page)}</main>`,
  )

/** What stands at an address that leads nowhere, whether it never led anywhere or was taken back. */
export const MEMBERS_NOT_FOUND = documentOf(
  'Nothing here',
  MEMBERS_PAGE_CSS,
  '<main class="members"><h1>Nothing here</h1><p>This address leads nowhere. The club may have a new one: ask in the clubhouse.</p></main>',
)
