import { describe, expect, it } from 'vitest'
import { unknownHours, withSaidRain } from './hand-typed.ts'

const LONDON = 'Europe/London'
const START = Date.parse('2026-08-10T00:00:00+01:00')
const day = unknownHours(START, 48)
const said = (rain: object) => {
  const answer = withSaidRain(day, { date: '2026-08-10', fromMin: 15 * 60, ...rain }, LONDON)
  if (!answer.ok) throw new Error(JSON.stringify(answer.error))
  return answer.value
}

describe('rain that a person expects', () => {
  it('at 15:00 makes the hours before dry and those after wet to the end of the day', () => {
    const { rainMm } = said({})
    expect([...rainMm.subarray(0, 15)]).toEqual(Array.from({ length: 15 }, () => 0))
    expect([...rainMm.subarray(15, 24)]).toEqual(Array.from({ length: 9 }, () => 1))
    expect([...rainMm.subarray(24)].every(Number.isNaN)).toBe(true)
  })

  it('takes in the hours it touches', () => {
    const { rainMm } = said({ fromMin: 14 * 60 + 30, untilMin: 16 * 60 + 10, mmPerHour: 4 })
    expect([13, 14, 15, 16].map((h) => rainMm[h])).toEqual([0, 4, 4, 4])
    expect(rainMm[17]).toBeNaN()
  })

  it('stands over the forecast in every member', () => {
    const twice = { ...day, members: 2, rainMm: new Float64Array(96).fill(3) }
    const answer = withSaidRain(twice, { date: '2026-08-10', fromMin: 0, mmPerHour: 0 }, LONDON)
    expect(answer.ok && [answer.value.rainMm[5], answer.value.rainMm[53], answer.value.rainMm[30]]).toEqual([
      0, 0, 3,
    ])
  })

  it('is read by the clock on the wall on the night of a change', () => {
    const autumn = unknownHours(Date.parse('2026-10-25T00:00:00+01:00'), 25)
    const answer = withSaidRain(autumn, { date: '2026-10-25', fromMin: 15 * 60 }, LONDON)
    // 15:00 is the sixteenth hour of that day, the hour from one to two having come twice.
    expect(answer.ok && [answer.value.rainMm[15], answer.value.rainMm[16]]).toEqual([0, 1])
  })

  it.each([
    [{ untilMin: 14 * 60 }, { type: 'endsBeforeStart', field: 'untilMin' }],
    [{ fromMin: 2000 }, { type: 'outOfRange', field: 'fromMin', max: 1439 }],
    [{ mmPerHour: -1 }, { type: 'outOfRange', field: 'mmPerHour', unit: 'mm/h' }],
    [{ date: '2026-08-20' }, { type: 'outsideHours', from: '2026-08-10T00:00:00+01:00' }],
  ])('is refused in words: %j', (rain, error) => {
    expect(withSaidRain(day, { date: '2026-08-10', fromMin: 15 * 60, ...rain }, LONDON)).toMatchObject({
      ok: false,
      error,
    })
  })
})
