import type { ComponentType } from 'preact'
import { useEffect, useState } from 'preact/hooks'

/**
 * A part of a page whose code comes after the page: nothing stands in its place until then, nor where it can’t be loaded (over plain http
 * without a line); the next time the part is shown it is tried again.
 */
export const later = <P extends object>(load: () => Promise<ComponentType<P>>): ComponentType<P> => {
  let loaded: ComponentType<P> | null = null
  return (props: P) => {
    const [Shown, setShown] = useState<{ readonly part: ComponentType<P> } | null>(
      loaded === null ? null : { part: loaded },
    )
    useEffect(() => {
      if (loaded !== null) return
      const show = async (): Promise<void> => {
        loaded = await load()
        setShown({ part: loaded })
      }
      show().catch(() => undefined)
    }, [])
    return Shown === null ? null : <Shown.part {...props} />
  }
}
