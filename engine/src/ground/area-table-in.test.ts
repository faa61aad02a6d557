import { expect, test } from 'vitest'
import { readAreaTable } from './area-table-in.ts'

const rows = (source: string) => {
  const table = readAreaTable(source)
  if (!table.ok) throw new Error(table.error.type)
  return table.value
}

test('names and areas in m2, with quotes and an empty line', () => {
  expect(rows('Green,Area m2\n1,455\n\n"Long, the",512.5\n').rows).toEqual([
    { name: '1', areaM2: 455 },
    { name: 'Long, the', areaM2: 512.5 },
  ])
})

test('semicolons with decimal commas, tabs, thousands parted', () => {
  expect(rows('Name;Area (m2)\nA;1.234,5\nB;455,25').rows.map((row) => row.areaM2)).toEqual([1234.5, 455.25])
  expect(rows('Hole\tArea\n7\t"1,050"').rows).toEqual([{ name: '7', areaM2: 1050 }])
})

test('square feet, square yards and hectares by their exact factors', () => {
  // 5,000 ft2 x 0.09290304 = 464.5152 m2; 600 yd2 x 0.83612736 = 501.676416 m2.
  expect(rows('green,area sq ft\n1,5000').rows[0]?.areaM2).toBeCloseTo(464.5152, 9)
  expect(rows('green,area (sq yd)\n1,600').rows[0]?.areaM2).toBeCloseTo(501.676416, 9)
  expect(rows('green,area ha\n1,0.045').rows[0]?.areaM2).toBeCloseTo(450, 9)
})

test('two spans make a better ellipse', () => {
  expect(rows('green,area,length m,width m\n1,450,28,21').rows).toEqual([
    { name: '1', areaM2: 450, spansM: [28, 21] },
  ])
  expect(rows('green,area,length m,width m\n1,450,,').rows).toEqual([{ name: '1', areaM2: 450 }])
})

test('lines that cannot be read are told by their number and the rest is kept', () => {
  const table = rows('green,area\n1,450\n2,abc\n,400\n4,0\n5,500')
  expect(table.rows.map((row) => row.name)).toEqual(['1', '5'])
  expect(table.errors).toEqual([
    { line: 3, field: 'area', received: 'abc', expected: '1 to 20000 m2' },
    { line: 4, field: 'name', received: '', expected: 'a name or number for the green' },
    { line: 5, field: 'area', received: '0', expected: '1 to 20000 m2' },
  ])
})

test('a table without header, area or name column is refused', () => {
  expect(readAreaTable('  \n')).toMatchObject({ error: { type: 'noHeader' } })
  expect(readAreaTable('green,size\n1,4')).toMatchObject({ error: { type: 'noAreaColumn' } })
  expect(readAreaTable('what,area\n1,4')).toMatchObject({ error: { type: 'noNameColumn' } })
})
