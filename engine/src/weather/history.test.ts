import { describe, expect, it } from 'vitest'
import * as v from 'valibot'
import { historyMap, serviceLayout, type Layout } from './history-map.ts'
import { readHistory, type History } from './history.ts'

const MAP = v.parse(historyMap, {
  date: { column: 'Day' },
  rainMm: { column: 'Rain', factor: 25.4, missing: ['M', -99], trace: { value: 'T', as: 0.05 } },
  minC: { column: 'Low', factor: 5 / 9, offset: -160 / 9 },
  maxC: { column: 'High', factor: 5 / 9, offset: -160 / 9 },
  windMPerS: { column: 'Wind' },
  dateFormat: 'dd/mm/yyyy',
  delimiter: ';',
  skipLines: 1,
  latitudeDeg: 51,
  longitudeDeg: 0,
  altitudeM: 10,
})

const read = (text: string, layout: Layout = MAP): History => {
  const history = readHistory(text, layout)
  if (!history.ok) throw new Error(JSON.stringify(history.error))
  return history.value
}

const HEAD = 'An invented station\nDay;Rain;High;Low;Wind\n'

describe('a mapped file', () => {
  it('is turned into our units, with traces and missing marks as the map says', () => {
    const { record, gaps } = read(
      `${HEAD}1/3/2024;0.1;50;32;3\n02/03/2024;T;50;32;3\n03/03/2024;M;50;32;3\n04/03/2024;-99;50;32;\n`,
    )
    const { rainMm, minC, maxC } = record.columns
    expect(rainMm[0]).toBeCloseTo(2.54, 10)
    expect(rainMm[1]).toBe(0.05)
    expect([minC[0], maxC[0]].map((t) => Math.round((t ?? NaN) * 1e9) / 1e9)).toEqual([0, 10])
    expect(gaps).toEqual([
      { column: 'rainMm', from: '2024-03-03', to: '2024-03-04', days: 2 },
      { column: 'windMPerS', from: '2024-03-04', to: '2024-03-04', days: 1 },
    ])
  })

  it('keeps the good rows and says of each bad one why', () => {
    const { days, from, to, gaps, refused } = read(
      `${HEAD}01/03/2024;0;50;32;3\n02/03/2024;wet;50;32;3\n30/02/2024;0;50;32;3\n03/03/2024;0;50\n05/03/2024;0;30;50;3\n01/03/2024;1;50;32;3\n06/03/2024;0;50;32;gale\n07/03/2024;0;500;32;3\n`,
    )
    expect(refused).toEqual([
      { row: 4, why: 'notANumber', column: 'rainMm', received: 'wet' },
      { row: 5, why: 'badDate', received: '30/02/2024', format: 'dd/mm/yyyy' },
      { row: 6, why: 'tooFewCells', cells: 3, expected: 5 },
      expect.objectContaining({ row: 7, why: 'minAboveMax' }),
      { row: 8, why: 'duplicateDay', date: '2024-03-01', firstRow: 3 },
      { row: 9, why: 'notANumber', column: 'windMPerS', received: 'gale' },
      expect.objectContaining({
        row: 10,
        why: 'outOfRange',
        column: 'maxC',
        unit: 'degC',
        min: -65,
        max: 60,
      }),
    ])
    expect({ days, from, to }).toEqual({ days: 2, from: '2024-03-01', to: '2024-03-06' })
    expect(gaps).toEqual([
      { column: 'day', from: '2024-03-02', to: '2024-03-05', days: 4 },
      { column: 'windMPerS', from: '2024-03-06', to: '2024-03-06', days: 1 },
    ])
  })

  it('may be out of order, quoted, with a byte-order mark and Windows line ends', () => {
    const text = `\uFEFF${HEAD}"02/03/2024";"0.2";50;32;3\n01/03/2024;0.1;50;32;3\n`.replaceAll('\n', '\r\n')
    expect([...read(text).record.columns.rainMm].map((mm) => Number(mm.toFixed(2)))).toEqual([2.54, 5.08])
  })

  it.each([
    ['', { type: 'noHeader' }],
    [
      'x\nDay;Rain;High\n',
      { type: 'noColumn', field: 'minC', column: 'Low', present: ['Day', 'Rain', 'High'] },
    ],
    [HEAD, { type: 'noRows', refused: [] }],
    [`${HEAD}soon;0;50;32;3\n`, { type: 'noRows', refused: [{ row: 3, why: 'badDate' }] }],
    [`${HEAD}01/01/1000;0;50;32;3\n01/01/2024;0;50;32;3\n`, { type: 'tooLong' }],
  ])('is refused in words when there is nothing to read: %j', (text, error) => {
    expect(readHistory(text, MAP)).toMatchObject({ ok: false, error })
  })
})

describe('the service’s daily layout', () => {
  /** As the service writes it: lines about the station, a legend, indicator columns, blanks as spaces; figures invented. */
  const FILE = `Station Name: NOWHERE
Station Height: 71 M
Latitude:53.428  ,Longitude: -6.241

date:  -  00 to 00 utc
rain:  -  Precipitation Amount (mm)
ind:   -  Indicator (i)
date,ind,maxtp,ind,mintp,igmin,gmin,ind,rain,cbl,wdsp,ind,hm,sun,dos,glorad,soil,pe
01-jan-2024,0,9.7,0,6.8,0,4.7,2,11.1,1010.3,17.2,1,28, ,0,100,5.2,1.1
02-jan-2024,0,8.0,0,5.1,0,3.0,2,0.0,1000.1,10.0,1,20,3.2,0,250,5.0,0.8
`

  it('is known by its header and brings the station along', () => {
    const layout = serviceLayout(FILE)
    expect(layout).toMatchObject({
      latitudeDeg: 53.428,
      longitudeDeg: -6.241,
      altitudeM: 71,
      dateFormat: 'dd-mon-yyyy',
    })
    const { record, gaps, refused } = read(FILE, layout)
    expect(refused).toEqual([])
    expect([...record.columns.rainMm]).toEqual([11.1, 0])
    expect([...record.columns.radiationMJPerM2]).toEqual([1, 2.5])
    // 17.2 knots are 17.2 x 1852 m an hour.
    expect(record.columns.windMPerS[0]).toBeCloseTo(8.8484, 4)
    expect(gaps).toEqual([{ column: 'sunshineHours', from: '2024-01-01', to: '2024-01-01', days: 1 }])
  })

  it('is not seen in another file', () => {
    expect(serviceLayout('date,precipitation,temp_max\n')).toBeUndefined()
  })
})
