// @vitest-environment happy-dom
import { render } from 'preact'
import { LocationProvider, useLocation } from 'preact-iso'
import { act } from 'preact/test-utils'
import { beforeEach, describe, expect, it, vi } from 'vitest'
import { pathPressed, Turning } from './turning.ts'

const Opened = () => <output>{useLocation().path}</output>

const root = document.createElement('div')
const opened = (): string => root.querySelector('output')?.textContent ?? ''

const press = (selector: string, keys: MouseEventInit = {}): MouseEvent => {
  const event = new MouseEvent('click', {
    bubbles: true,
    cancelable: true,
    composed: true,
    button: 0,
    ...keys,
  })
  root.querySelector(selector)?.dispatchEvent(event)
  return event
}

/** Long enough for a picture and what comes after it. */
const afterwards = (): Promise<void> => act(() => new Promise<void>((resolve) => setTimeout(resolve, 300)))

beforeEach(async () => {
  history.replaceState(null, '', '/')
  document.body.replaceChildren(root)
  render(null, root)
  await act(() =>
    render(
      <LocationProvider>
        <Turning />
        <Opened />
        <a class="plan" href="/plan">
          Plan
        </a>
        <a class="course" href="/course">
          Course
        </a>
        <a class="file" href="/course.geojson" download="course.geojson">
          File
        </a>
        <a class="place" href="#page">
          To the page
        </a>
      </LocationProvider>,
      root,
    ),
  )
})

describe('a link that is pressed', () => {
  it('is known at once, and its page is turned to after the next picture', async () => {
    const event = press('.plan')
    expect([event.defaultPrevented, pathPressed.value, opened()]).toEqual([true, '/plan', '/'])
    await afterwards()
    expect([pathPressed.value, opened(), location.pathname]).toEqual([null, '/plan', '/plan'])
  })

  it('gives way to another that is pressed after it', async () => {
    const push = vi.spyOn(history, 'pushState')
    press('.plan')
    press('.course')
    await afterwards()
    expect(opened()).toBe('/course')
    expect(push).toHaveBeenCalledTimes(1)
    push.mockRestore()
  })

  it('gives way to the browser’s own back', async () => {
    press('.plan')
    await act(() => void dispatchEvent(new PopStateEvent('popstate')))
    expect(pathPressed.value).toBeNull()
    await afterwards()
    expect(opened()).toBe('/')
  })

  it.each([
    ['with the control key', '.plan', { ctrlKey: true }],
    ['with the command key', '.plan', { metaKey: true }],
    ['with the shift key', '.plan', { shiftKey: true }],
    ['with another button', '.plan', { button: 1 }],
    ['for a file', '.file', {}],
    ['for a place on the page', '.place', {}],
  ])('is left to the browser %s', (_, selector, keys) => {
    press(selector, keys)
    expect(pathPressed.value).toBeNull()
  })
})
