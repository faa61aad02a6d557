// @vitest-environment happy-dom
import { beforeEach, expect, it, vi } from 'vitest'

const line = { green: 'g01', time: '11:40', note: '' }
const other = { green: 'g02', time: '12:05', note: 'wet' }
const stop = { step: 'g03 core 1 ', time: '10:20', why: 'rain', words: '' }
const day = '2026-08-10'

/** The app as it is opened anew in the same browser. */
const opened = async () => {
  vi.resetModules()
  const { courseId } = await import('./journal.ts')
  courseId.value = 'demo'
  return { courseId, ...(await import('./typed-sheet.ts')) }
}

beforeEach(() => localStorage.clear())

it('keeps what is typed in for each day and course until it is written down, also when the app is closed', async () => {
  const first = await opened()
  first.typeSheet(day, { lines: { g01: line }, stops: [stop] })
  const again = await opened()
  expect(again.typedSheet(day)).toEqual({ lines: { g01: line }, stops: [stop] })
  expect(again.typedSheet('2026-08-11')).toEqual({ lines: {}, stops: [] })
  again.courseId.value = 'another'
  expect(again.typedSheet(day)).toEqual({ lines: {}, stops: [] })
  again.courseId.value = 'demo'
  again.dropWritten(day, { lines: { g01: line }, stops: [stop] })
  expect(localStorage.length).toBe(0)
})

it('leaves in the fields what was typed while the rest was written down', async () => {
  const { dropWritten, typedSheet, typeSheet } = await opened()
  const late = { ...stop, time: '14:00' }
  typeSheet(day, { lines: { g01: { ...line, note: 'torn' }, g02: other }, stops: [stop, late] })
  dropWritten(day, { lines: { g01: line, g02: other }, stops: [stop] })
  expect(typedSheet(day)).toEqual({ lines: { g01: { ...line, note: 'torn' } }, stops: [late] })
})

it('puts back what is taken back, but not over what was typed since', async () => {
  const { putBackSheet, typedSheet, typeSheet } = await opened()
  const since = { ...other, time: '12:15' }
  typeSheet(day, { lines: { g02: since }, stops: [] })
  putBackSheet(day, { lines: { g01: line, g02: other }, stops: [stop] })
  expect(typedSheet(day)).toEqual({ lines: { g01: line, g02: since }, stops: [stop] })
})

it('keeps nothing of a sheet that was emptied again by hand', async () => {
  const { typeSheet } = await opened()
  typeSheet(day, { lines: { g01: line }, stops: [] })
  typeSheet(day, { lines: { g01: { ...line, time: '' } }, stops: [] })
  expect(localStorage.length).toBe(0)
})
