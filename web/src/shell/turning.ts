import { signal } from '@preact/signals'
import { useLocation } from 'preact-iso'
import { useEffect } from 'preact/hooks'
import { afterPicture } from '../parts/soon.ts'

type Route = (address: string) => void

/** The path that was pressed and whose page is not drawn yet; null while none is. */
export const pathPressed = signal<string | null>(null)

let callOff = (): void => undefined

const forget = (): void => {
  callOff()
  pathPressed.value = null
}

/** Turns to a page of the app: its tab is marked in the next picture, the page drawn after that. Of several presses the last one counts. */
export const turnTo = (address: string, route: Route): void => {
  callOff()
  pathPressed.value = new URL(address, location.origin).pathname
  callOff = afterPicture(() => {
    route(address)
    pathPressed.value = null
  })
}

/** The address of a link that was pressed to turn to a page of the app; null where the browser deals with it: another key held, another window, a file, a place on this page. */
const addressPressed = (event: MouseEvent): string | null => {
  if (event.defaultPrevented || event.button !== 0) return null
  if (event.ctrlKey || event.metaKey || event.altKey || event.shiftKey) return null
  const link = event.composedPath().find((target) => target instanceof HTMLAnchorElement)
  const href = link?.getAttribute('href')
  if (link === undefined || href === null || href === undefined || href.startsWith('#')) return null
  if (link.origin !== location.origin || link.download !== '' || !/^(?:_?self)?$/iu.test(link.target))
    return null
  return link.href.slice(location.origin.length)
}

/** Answers presses of links before the pages that they lead to are drawn. Stands inside the router's provider, whose own listener is further out. */
export const Turning = (): null => {
  const { route } = useLocation()
  useEffect(() => {
    const pressed = (event: MouseEvent): void => {
      const address = addressPressed(event)
      if (address === null) return
      event.preventDefault()
      event.stopPropagation()
      turnTo(address, route)
    }
    document.addEventListener('click', pressed)
    // Back and forward are turned to by the router itself, and outdo what was pressed before.
    addEventListener('popstate', forget)
    return () => {
      document.removeEventListener('click', pressed)
      removeEventListener('popstate', forget)
    }
  }, [route])
  return null
}
