/** One line of a table: its number in the file (1 for the first) and its cells, trimmed. */
export type CsvLine = { readonly line: number; readonly cells: readonly string[] }

const QUOTED = /^"(?:[^"]|"")*$/u

/** Cells of one line: quotes round a cell are taken off, doubled quotes inside it halved (RFC 4180). */
const cellsOf = (text: string, delimiter: string): string[] => {
  if (!text.includes('"')) return text.split(delimiter).map((cell) => cell.trim())
  const cells: string[] = []
  let open = ''
  for (const part of text.split(delimiter)) {
    const cell = open === '' ? part.trimStart() : `${open}${delimiter}${part}`
    const quotes = cell.length - cell.replaceAll('"', '').length
    if (QUOTED.test(cell) && quotes % 2 === 1) {
      open = cell
      continue
    }
    open = ''
    const trimmed = cell.trim()
    cells.push(
      trimmed.startsWith('"') && trimmed.endsWith('"') ? trimmed.slice(1, -1).replaceAll('""', '"') : trimmed,
    )
  }
  if (open !== '') cells.push(open.slice(1))
  return cells
}

/** Lines of a table with their numbers; empty lines are left out, a byte-order mark is dropped. Line breaks inside quotes are not read: records of weather have none. */
export const csvLines = (text: string, delimiter: string): CsvLine[] =>
  text
    .replace(/^\uFEFF/u, '')
    .split(/\r\n|\n|\r/u)
    .map((line, i) => ({ line: i + 1, text: line }))
    .filter(({ text: line }) => line.trim() !== '')
    .map(({ line, text: content }) => ({ line, cells: cellsOf(content, delimiter) }))
