import { existsSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { CATALOGUE, calculate, LIMITS, type Check } from '@swardwright/engine'

/** The published rows beside the checkout, with columns id, kind, item, inputs, output, expected, unit, tol, cls, src, desc. */
const ROWS_FILE = new URL('../../shared/reference/agronomy-checks.csv', import.meta.url)

/** Splits one line of comma-separated values with doubled quotes. */
const cellsOf = (line: string): readonly string[] =>
  [...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^",]*))/gu)].map((m) =>
    (m[1] ?? m[2] ?? '').replaceAll('""', '"'),
  )

type Row = { readonly id: string; readonly [column: string]: string }

const rowsOf = (text: string): readonly Row[] => {
  const [head, ...lines] = text.trim().split(/\r?\n/u)
  const columns = cellsOf(head ?? '')
  return lines.map((line) => {
    const cells = cellsOf(line)
    return { id: cells[0] ?? '', ...Object.fromEntries(columns.map((column, i) => [column, cells[i] ?? ''])) }
  })
}

const rows = existsSync(ROWS_FILE) ? rowsOf(readFileSync(ROWS_FILE, 'utf8')) : []
const calcRows = rows.filter((row) => row['kind'] === 'calc')
const limitRows = rows.filter((row) => row['kind'] === 'limit')

const CLASS_OF_LETTER: Readonly<Record<string, Check['class']>> = {
  P: 'published',
  D: 'derived',
  M: 'memory',
}

/** A number of an answer by `factor*path`. */
const numberAt = (answer: unknown, output: string): number => {
  const [, factor, path] = /^(?:([\d.]+)\*)?(.+)$/u.exec(output) ?? []
  const found = (path ?? '')
    .split(/[.[\]]+/u)
    .filter((key) => key !== '')
    .reduce<unknown>((value, key) => (value as Record<string, unknown> | undefined)?.[key], answer)
  return Number(found) * Number(factor ?? 1)
}

describe.skipIf(rows.length === 0)(
  'the published rows (skipped when the reference list is not beside the checkout)',
  () => {
    it('are read whole', () => {
      expect(rows).toHaveLength(113)
      expect(calcRows.length).toBeGreaterThan(70)
    })

    it.each(calcRows.map((row) => [row.id, row['desc'], row] as const))('%s: %s', (_id, _desc, row) => {
      const answer = calculate(row['item'] ?? '', JSON.parse(row['inputs'] ?? ''))
      if (!answer.ok) throw new Error(JSON.stringify(answer.error))
      const off = Math.abs(numberAt(answer.value, row['output'] ?? '') - Number(row['expected']))
      expect(off).toBeLessThanOrEqual(Number(row['tol']) + 1e-9)
    })

    it.each(calcRows.map((row) => [row.id, row] as const))(
      '%s stands in the catalogue itself, with its class',
      (id, row) => {
        const check = CATALOGUE.find((entry) => entry.name === row['item'])?.checks.find((c) => c.id === id)
        expect(check?.class).toBe(CLASS_OF_LETTER[row['cls'] ?? ''])
        expect(check?.expected).toBe(Number(row['expected']))
        expect(check?.tolerance).toBe(Number(row['tol']))
      },
    )

    it.each(limitRows.map((row) => [row.id, row] as const))(
      'limit %s stands in the table of limits',
      (id, row) => {
        const values = Object.values(LIMITS)
          .filter((limit) => limit.id === id)
          .map((limit) => limit.value)
        expect(values).toEqual((row['expected'] ?? '').split('/').map(Number))
      },
    )
  },
)
