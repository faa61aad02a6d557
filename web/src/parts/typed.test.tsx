// @vitest-environment happy-dom
import { render } from 'preact'
import { act } from 'preact/test-utils'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { TextField } from './fields.tsx'
import { NumberField } from './NumberField.tsx'

beforeEach(() => {
  vi.useFakeTimers()
  document.body.innerHTML = '<div id="app"></div>'
})

afterEach(() => {
  vi.useRealTimers()
})

const place = (): HTMLElement => {
  const app = document.getElementById('app')
  if (app === null) throw new Error('no place to render')
  return app
}

const box = (): HTMLInputElement => {
  const input = document.querySelector('input')
  if (input === null) throw new Error('no input')
  return input
}

/** A number field whose record is told by hand, as entries come in. */
const numberField = () => {
  const handed: number[] = []
  const record = (value: number) =>
    act(() =>
      render(
        <NumberField
          label="Area"
          unit="m²"
          value={value}
          min={50}
          max={5000}
          onValue={(one) => handed.push(one)}
        />,
        place(),
      ),
    )
  return { handed, record }
}

const textField = () => {
  const handed: string[] = []
  const record = (value: string) =>
    act(() => render(<TextField label="Name" value={value} onValue={(one) => handed.push(one)} />, place()))
  return { handed, record }
}

const type = (text: string) =>
  act(() => {
    box().value = text
    box().dispatchEvent(new Event('input', { bubbles: true }))
  })

const wait = () =>
  act(async () => {
    await vi.advanceTimersByTimeAsync(600)
  })

const leave = () =>
  act(() => {
    box().dispatchEvent(new Event('change', { bubbles: true }))
    box().dispatchEvent(new Event('blur'))
  })

describe('a number that is being typed', () => {
  it('stays when another phone’s entry changes the record meanwhile, and is handed on', async () => {
    const { handed, record } = numberField()
    await record(430)
    await type('44')
    await record(500)
    expect(box().value).toBe('44')
    await type('441')
    await leave()
    expect(handed).toEqual([441])
    expect(box().value).toBe('441')
  })

  it('is not put back by one’s own last entry, which the store has kept only now', async () => {
    const { handed, record } = numberField()
    await record(430)
    await type('301')
    await leave()
    await type('302')
    await leave()
    await record(301)
    expect(box().value).toBe('302')
    await record(302)
    expect(box().value).toBe('302')
    expect(handed).toEqual([301, 302])
  })

  it('is handed on also where it takes one’s own last entry back before that has come into the record', async () => {
    const { handed, record } = numberField()
    await record(430)
    await type('301')
    await leave()
    await type('430')
    await leave()
    expect(handed).toEqual([301, 430])
  })

  it('is handed on once, after a pause and when the field is left', async () => {
    const { handed, record } = numberField()
    await record(430)
    await type('301')
    await wait()
    await leave()
    await wait()
    expect(handed).toEqual([301])
  })

  it('is handed on when the page goes before the pause is over', async () => {
    const { handed, record } = numberField()
    await record(430)
    await type('301')
    await act(() => render(null, place()))
    expect(handed).toEqual([301])
  })

  it('stays where it is out of range, whatever comes in, with what is accepted beside it', async () => {
    const { handed, record } = numberField()
    await record(430)
    await type('9')
    await leave()
    await record(500)
    expect(box().value).toBe('9')
    expect(document.querySelector('[role=alert]')?.textContent).toBe('Area: 50 to 5000 m², not 9')
    expect(handed).toEqual([])
  })
})

describe('a field that is only looked into', () => {
  it('follows the record and hands nothing on when it is left', async () => {
    const { handed, record } = numberField()
    await record(430)
    box().focus()
    await record(500)
    expect(box().value).toBe('500')
    await leave()
    expect(handed).toEqual([])
  })

  it('follows again after what was typed has come into the record', async () => {
    const { record } = numberField()
    await record(430)
    await type('301')
    await leave()
    await record(301)
    await record(500)
    expect(box().value).toBe('500')
  })
})

describe('a line of text that is being typed', () => {
  it('stays when an entry changes the record meanwhile, and is handed on when the field is left', async () => {
    const { handed, record } = textField()
    await record('Long Meadow')
    await type('Short Mea')
    await record('Meadow')
    expect(box().value).toBe('Short Mea')
    await type('Short Meadow')
    await leave()
    expect(handed).toEqual(['Short Meadow'])
  })

  it('is handed on when the page goes', async () => {
    const { handed, record } = textField()
    await record('Long Meadow')
    await type('Short Meadow')
    await act(() => render(null, place()))
    expect(handed).toEqual(['Short Meadow'])
  })
})
