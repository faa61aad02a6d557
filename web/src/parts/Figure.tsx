import type { ComponentChildren } from 'preact'
import { askWhereFrom, type WhereFrom } from '../state/where-from.ts'

type FigureProps = {
  readonly label: string
  /** The figure as it is read, without its unit. */
  readonly value: string
  readonly unit?: string
  /** The likely range, in words. */
  readonly range?: ComponentChildren
  /** The calculation behind it, if it is one. */
  readonly from?: WhereFrom | undefined
}

/** A figure that can be pressed to ask where it comes from. */
export const Asked = (props: {
  readonly from: WhereFrom | undefined
  readonly children: ComponentChildren
}) =>
  props.from === undefined ? (
    <>{props.children}</>
  ) : (
    <button
      type="button"
      class="figure-from"
      title="Where does this number come from?"
      onClick={() => props.from !== undefined && askWhereFrom(props.from)}
    >
      {props.children}
    </button>
  )

/** A figure that matters, two to three times the size of the text, with its unit beside it and its range below. */
export const Figure = (props: FigureProps) => (
  <div class="figure">
    <span class="label">{props.label}</span>
    <span class="value">
      <Asked from={props.from}>
        {props.value}
        {props.unit === undefined ? null : <span class="unit"> {props.unit}</span>}
      </Asked>
    </span>
    {props.range === undefined ? null : <span class="range">{props.range}</span>}
  </div>
)

/** A word and its figure on one line with a dotted leader between. */
export const Fact = (props: {
  readonly word: ComponentChildren
  readonly children: ComponentChildren
  readonly range?: ComponentChildren
  readonly from?: WhereFrom | undefined
}) => (
  <div>
    <dt>{props.word}</dt>
    <dd>
      <Asked from={props.from}>{props.children}</Asked>
      {props.range === undefined ? null : <span class="range">{props.range}</span>}
    </dd>
  </div>
)
