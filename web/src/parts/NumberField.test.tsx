// @vitest-environment happy-dom
import { render } from 'preact'
import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import { NumberField } from './NumberField.tsx'

const show = (onValue: (value: number) => void) => {
  document.body.innerHTML = '<div id="app"></div>'
  const app = document.getElementById('app')
  if (app === null) throw new Error('no place to render')
  render(<NumberField label="Depth" unit="mm" value={60} min={5} max={400} onValue={onValue} />, app)
  const input = document.querySelector('input')
  if (input === null) throw new Error('no input')
  return input
}

const type = (input: HTMLInputElement, text: string) => {
  input.value = text
  input.dispatchEvent(new Event('input', { bubbles: true }))
}

beforeEach(() => {
  vi.useFakeTimers()
})

afterEach(() => {
  vi.useRealTimers()
})

it('hands a number on after a pause in typing, and only the last one typed', async () => {
  const onValue = vi.fn()
  const input = show(onValue)
  type(input, '7')
  await vi.advanceTimersByTimeAsync(100)
  type(input, '75')
  await vi.advanceTimersByTimeAsync(600)
  expect(onValue.mock.calls).toEqual([[75]])
})

it('says what is accepted instead of handing on a number out of range', async () => {
  const onValue = vi.fn()
  const input = show(onValue)
  type(input, '900')
  await vi.advanceTimersByTimeAsync(600)
  expect(onValue).not.toHaveBeenCalled()
  expect(document.querySelector('[role=alert]')?.textContent).toBe('Depth: 5 to 400 mm, not 900')
  expect(input.getAttribute('aria-invalid')).toBe('true')
})

it('ties the label and the hint to the box', () => {
  const input = show(() => undefined)
  expect(document.querySelector('label')?.htmlFor).toBe(input.id)
  expect(input.getAttribute('aria-describedby')).toBe(`${input.id}-hint`)
})
