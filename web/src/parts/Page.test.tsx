// @vitest-environment happy-dom
import { render } from 'preact'
import { act } from 'preact/test-utils'
import { beforeEach, describe, expect, it, vi } from 'vitest'
import { Page } from './Page.tsx'

beforeEach(() => {
  document.body.innerHTML = '<div id="app"></div>'
  history.replaceState(null, '', '/')
})

const show = (title: string): void => {
  const app = document.getElementById('app')
  if (app === null) throw new Error('no place to render')
  void act(() => render(<Page title={title}>{null}</Page>, app))
}

describe('a page', () => {
  it('stays where it is read when its heading changes, as the clock of the board does, and begins at the top when it is another page', () => {
    const scrolled = vi.spyOn(window, 'scrollTo').mockImplementation(() => undefined)
    show('08:30')
    expect(scrolled).toHaveBeenCalledTimes(1)
    show('08:31')
    expect(document.title).toBe('08:31 · Swardwright')
    expect(scrolled).toHaveBeenCalledTimes(1)
    history.replaceState(null, '', '/green/g02')
    show('2 Larkrise')
    expect(scrolled).toHaveBeenCalledTimes(2)
  })
})
