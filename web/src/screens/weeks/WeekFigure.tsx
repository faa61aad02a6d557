import type { ComponentChildren } from 'preact'
import { askedWeek } from './asked.ts'
import { WORDS, type About } from './words.ts'

/** A figure of a week that can be pressed to see its years and what it means. */
export const WeekFigure = (props: {
  readonly firstDay: string
  readonly about: About
  readonly children: ComponentChildren
}) => (
  <button
    type="button"
    class="figure-from"
    title={WORDS.whereFrom}
    onClick={() => {
      askedWeek.value = { firstDay: props.firstDay, about: props.about }
    }}
  >
    {props.children}
  </button>
)
