import type { Green } from '@swardwright/engine'
import { Tick } from './fields.tsx'

/** The greens of the course to tick, in playing order. */
export const GreenTicks = (props: {
  readonly label: string
  readonly greens: readonly Green[]
  readonly chosen: readonly string[]
  readonly onChosen: (chosen: string[]) => void
}) => (
  <fieldset>
    <legend>{props.label}</legend>
    <div class="fields">
      {props.greens.map((green) => (
        <Tick
          key={green.id}
          label={green.hole === null ? green.name : `${green.hole} ${green.name}`}
          checked={props.chosen.includes(green.id)}
          onValue={(ticked) =>
            props.onChosen(
              props.greens
                .map((other) => other.id)
                .filter((id) => (id === green.id ? ticked : props.chosen.includes(id))),
            )
          }
        />
      ))}
    </div>
  </fieldset>
)
