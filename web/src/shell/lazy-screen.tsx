import type { ComponentType } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import { lazy } from 'preact-iso'
import { Page } from '../parts/Page.tsx'
import { loadAnew } from '../state/missing-part.ts'

const WORDS = {
  title: 'This page has not come yet',
  lead: 'Its part of the app could not be fetched. What you recorded is safe on this device.',
  again: 'Try again',
  asking: 'Asking for it …',
  still: 'The server still does not answer. Check the line, then try again.',
} as const

type Screen<P> = ComponentType<P>
type Load<P> = () => Promise<Screen<P>>

/**
 * Stands in for a screen whose code did not come. It asks once more as soon as it is opened again, and when the person says so; where the
 * server answers and the code still does not come, a newer version has taken its place, and only loading the app anew helps.
 */
const missingScreen = <P extends object>(load: Load<P>): Screen<P> => {
  const Missing = (props: P) => {
    const [found, setFound] = useState<{ readonly Screen: Screen<P> } | null>(null)
    const [told, setTold] = useState<string | null>(null)
    const ask = async (): Promise<boolean> => {
      const Screen = await load().catch(() => null)
      if (Screen !== null) setFound({ Screen })
      return Screen !== null
    }
    const again = async (): Promise<void> => {
      setTold(WORDS.asking)
      if (!(await ask()) && !(await loadAnew())) setTold(WORDS.still)
    }
    useEffect(() => void ask(), [])
    if (found !== null) return <found.Screen {...props} />
    return (
      <Page title={WORDS.title} lead={WORDS.lead}>
        <div class="stack">
          <p>
            <button type="button" class="primary" onClick={() => void again()}>
              {WORDS.again}
            </button>
          </p>
          <p role="status">{told}</p>
        </div>
      </Page>
    )
  }
  return Missing
}

/** A screen whose code comes when it is first opened; the page before it stays until then. Where the code can't be had, a page says so. */
export const lazyScreen = <P extends object>(load: Load<P>): Screen<P> =>
  lazy(() => load().catch(() => missingScreen(load)))
