// @vitest-environment happy-dom
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { afterPicture, inTurn } from './soon.ts'

let pictures: (() => void)[] = []

/** The browser draws a picture, then goes on with what was set down for after it. */
const picture = (): void => {
  const due = pictures
  pictures = []
  for (const draw of due) draw()
  vi.advanceTimersByTime(1)
}

beforeEach(() => {
  vi.useFakeTimers()
  pictures = []
  vi.stubGlobal('requestAnimationFrame', (draw: () => void) => pictures.push(draw))
})
afterEach(() => {
  vi.runAllTimers()
  vi.useRealTimers()
  vi.unstubAllGlobals()
})

describe('work that waits for a picture', () => {
  it('is done after it, not before, and once', () => {
    const work = vi.fn()
    afterPicture(work)
    vi.advanceTimersByTime(100)
    expect(work).not.toHaveBeenCalled()
    picture()
    expect(work).toHaveBeenCalledTimes(1)
    vi.advanceTimersByTime(1000)
    expect(work).toHaveBeenCalledTimes(1)
  })

  it('is done all the same where no picture is drawn, as on a page out of sight', () => {
    const work = vi.fn()
    afterPicture(work)
    vi.advanceTimersByTime(1000)
    expect(work).toHaveBeenCalledTimes(1)
  })

  it('is not done once it was called off', () => {
    const work = vi.fn()
    afterPicture(work)()
    picture()
    vi.advanceTimersByTime(1000)
    expect(work).not.toHaveBeenCalled()
  })
})

describe('work that is done in turn', () => {
  it('is one piece after each picture, in the order asked for', () => {
    const done: number[] = []
    inTurn(() => done.push(1))
    inTurn(() => done.push(2))
    const callOff = inTurn(() => done.push(3))
    inTurn(() => done.push(4))
    picture()
    expect(done).toEqual([1])
    picture()
    expect(done).toEqual([1, 2])
    callOff()
    picture()
    expect(done).toEqual([1, 2, 4])
  })

  it('is all done before the page goes on paper', () => {
    const done: number[] = []
    inTurn(() => done.push(1))
    inTurn(() => done.push(2))
    dispatchEvent(new Event('beforeprint'))
    expect(done).toEqual([1, 2])
    picture()
    expect(done).toEqual([1, 2])
  })
})
