import type { ComponentChildren } from 'preact'
import { useEffect, useRef } from 'preact/hooks'
import { mayRecord } from '../state/access.ts'

/** For the committee: nothing on any page offers a change. */
const READS = 'You can read everything here. Changes are for those who run the course.'

/** One page of the notebook: its heading takes the focus when the page opens, so that a reader knows where it is. */
export const Page = (props: {
  readonly title: string
  /** Above the heading: where or when one is. */
  readonly over?: ComponentChildren
  /** Below the heading: what the page is for. */
  readonly lead?: string
  readonly children: ComponentChildren
}) => {
  const heading = useRef<HTMLHeadingElement>(null)
  const { pathname } = location
  useEffect(() => {
    document.title = `${props.title} · Swardwright`
  }, [props.title])
  useEffect(() => {
    if (document.activeElement === document.body || document.activeElement?.closest('.tabs') !== null)
      heading.current?.focus({ preventScroll: true })
    window.scrollTo(0, 0)
    // By the page, not by its heading: the board's is the clock, and must not throw a reader to the top each minute.
  }, [pathname])
  return (
    <main class="page" id="page">
      <header>
        {props.over === undefined ? null : <p class="over">{props.over}</p>}
        <h1 ref={heading} tabIndex={-1}>
          {props.title}
        </h1>
        {props.lead === undefined ? null : <p class="lead">{props.lead}</p>}
        {mayRecord.value ? null : <p class="small no-print">{READS}</p>}
      </header>
      {props.children}
    </main>
  )
}

/** A part of a page with its heading on a rule. */
export const Part = (props: {
  readonly title: string
  readonly aside?: ComponentChildren
  readonly children: ComponentChildren
  readonly class?: string
}) => (
  <section class={props.class}>
    <div class="section-head">
      <h2>{props.title}</h2>
      {props.aside}
    </div>
    {props.children}
  </section>
)
