import type { ComponentChildren } from 'preact'
import { Fold } from './Fold.tsx'

/** A list of named things: the name and the essentials in sight, the rest behind each row. */
export const NamedFolds = <Thing extends { readonly id: string; readonly name: string }>(props: {
  readonly things: readonly Thing[]
  /** Said when there is none. */
  readonly none: string
  readonly essentials: (thing: Thing) => string
  readonly behind: (thing: Thing) => ComponentChildren
}) => (
  <>
    {props.things.length === 0 ? <p>{props.none}</p> : null}
    <div>
      {props.things.map((thing) => (
        <Fold
          key={thing.id}
          summary={
            <span>
              {thing.name} <span class="quiet small">{props.essentials(thing)}</span>
            </span>
          }
        >
          {() => props.behind(thing)}
        </Fold>
      ))}
    </div>
  </>
)
