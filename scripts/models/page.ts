import {
  CATALOGUE,
  describeItem,
  type Check,
  type FieldDescription,
  type ItemDescription,
} from '@swardwright/engine'
import type { Family } from './families.ts'

/** Text inside a table: a bar would end the cell. */
const cell = (text: string): string => text.replaceAll('|', '\\|').replaceAll('\n', ' ')

const table = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
  [head, head.map(() => '---'), ...rows].map((row) => `| ${row.map(cell).join(' | ')} |`).join('\n')

/** A number as a person writes it: no tail of rounding. */
const plain = (value: number): string => String(Number(value.toPrecision(6)))

/** What a field takes: its range, or its words. */
const accepted = (f: FieldDescription): string => {
  if (f.choices !== null) return f.choices.map((word) => `\`${word}\``).join(' or ')
  if (f.min !== null && f.max !== null) return `${plain(f.min)} to ${plain(f.max)}`
  return f.unit === '' ? 'true or false' : ''
}

const leftOut = (f: FieldDescription): string => {
  if (!f.optional) return ''
  return f.default === null ? 'may be left out' : `${String(f.default)} if left out`
}

const inputTable = (item: ItemDescription): string =>
  table(
    ['you give', 'field', 'symbol', 'unit', 'accepted', ''],
    item.inputs.map((f) => [f.meaning, `\`${f.field}\``, f.symbol ?? '', f.unit, accepted(f), leftOut(f)]),
  )

const outputTable = (item: ItemDescription): string =>
  table(
    ['you get', 'field', 'symbol', 'unit'],
    item.outputs.map((f) => [f.meaning, `\`${f.field}\``, f.symbol ?? '', f.unit]),
  )

const WORD_OF_CLASS: Readonly<Record<Check['class'], string>> = {
  published: 'read in the source',
  derived: 'worked by hand from the source',
  memory: 'from memory, to be confirmed',
}

const checkTable = (item: ItemDescription): string =>
  table(
    ['row', 'what', 'must give', 'standing'],
    item.checks.map((check) => [
      check.id,
      check.where,
      `${check.factor === undefined ? '' : `${plain(check.factor)} x `}${check.output} = ${plain(check.expected)} +- ${plain(check.tolerance)}`,
      WORD_OF_CLASS[check.class],
    ]),
  )

/** Longest input that is worth typing. */
const LONGEST_EXAMPLE = 220

/** The first published row as a command, where it is short enough to type. */
const example = (item: ItemDescription): readonly string[] => {
  const input = item.checks
    .map((check) => JSON.stringify(check.input))
    .find((text) => text.length <= LONGEST_EXAMPLE)
  return input === undefined
    ? []
    : ['', 'Try it:', '', `    npm run -s swardwright -- calc run ${item.name} '${input}'`]
}

const section = (item: ItemDescription): string =>
  [
    `## ${item.title}`,
    '',
    `\`${item.name}\``,
    '',
    item.words,
    '',
    `Formula: \`${item.formula}\``,
    '',
    `How sure: **${item.evidence}**.`,
    '',
    inputTable(item),
    '',
    outputTable(item),
    ...(item.notes.length === 0
      ? []
      : ['', 'To bear in mind:', '', ...item.notes.map((note) => `- ${note}`)]),
    '',
    'Sources:',
    '',
    ...item.sources.map((source) => `- ${source.text}${source.url === null ? '' : ` <${source.url}>`}`),
    '',
    'Published rows, run as a test on every change:',
    '',
    checkTable(item),
    ...example(item),
    '',
  ].join('\n')

/** The items that a page tells, in the order of the catalogue. */
export const itemsOf = (family: Family): readonly ItemDescription[] =>
  CATALOGUE.filter((item) => family.items.some((beginning) => item.name.startsWith(beginning))).map(
    describeItem,
  )

/** A page: the explanation written by hand, the picture, then every item out of the catalogue. */
export const pageOf = (family: Family, words: string): string =>
  [
    `<!-- Made by scripts/models.ts. The explanation is docs/models/words/${family.file}.md; the rest comes from the catalogue. -->`,
    '',
    `# ${family.title}`,
    '',
    words.trim(),
    '',
    `![${family.shows}](pictures/${family.file}.svg)`,
    '',
    `_${family.shows}_`,
    '',
    ...itemsOf(family).map(section),
  ].join('\n')

/** The list of all pages and items. */
export const indexOf = (families: readonly Family[], words: string): string =>
  [
    '<!-- Made by scripts/models.ts. The explanation is docs/models/words/README.md; the lists come from the catalogue. -->',
    '',
    '# The models',
    '',
    words.trim(),
    '',
    ...families.flatMap((family) => [
      `## [${family.title}](${family.file}.md)`,
      '',
      table(
        ['calculation', 'what it tells', 'how sure', 'rows'],
        itemsOf(family).map((item) => [
          `\`${item.name}\``,
          item.title,
          item.evidence,
          String(item.checks.length),
        ]),
      ),
      '',
    ]),
  ].join('\n')
