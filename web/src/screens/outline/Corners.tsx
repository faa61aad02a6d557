import { NumberField } from '../../parts/NumberField.tsx'
import { localOf, pairOf, planeOf, type Pair } from './draft.ts'
import { WORDS } from './words.ts'

/** Further from the middle than this no corner of a green lies, m. */
const FURTHEST_M = 300

/** The corners as a list of fields: the same as the map, by keyboard. */
export const Corners = (props: {
  readonly outer: readonly Pair[]
  readonly middle: Pair
  readonly onOuter: (outer: readonly Pair[]) => void
}) => {
  const { outer, onOuter } = props
  const plane = planeOf(props.middle)
  const corners = localOf(outer, plane)
  const put = (index: number, x: number, y: number) =>
    onOuter(outer.with(index, pairOf(plane.toLonLat({ x, y }))))
  const addAfter = (index: number) => {
    const here = corners[index] ?? { x: 0, y: 0 }
    const next = corners[(index + 1) % Math.max(1, corners.length)] ?? here
    const between =
      corners.length < 2
        ? { x: here.x + 5, y: here.y + 5 * corners.length }
        : { x: (here.x + next.x) / 2, y: (here.y + next.y) / 2 }
    onOuter(outer.toSpliced(index + 1, 0, pairOf(plane.toLonLat(between))))
  }
  return (
    <div class="stack">
      <p class="small quiet">{WORDS.cornersLead}</p>
      <ol class="corners">
        {corners.map(({ x, y }, index) => (
          <li key={index}>
            <fieldset>
              <legend>{WORDS.corner(index + 1)}</legend>
              <div class="fields">
                <NumberField
                  label={WORDS.east}
                  unit="m"
                  value={x}
                  min={-FURTHEST_M}
                  max={FURTHEST_M}
                  digits={2}
                  onValue={(value) => put(index, value, y)}
                />
                <NumberField
                  label={WORDS.north}
                  unit="m"
                  value={y}
                  min={-FURTHEST_M}
                  max={FURTHEST_M}
                  digits={2}
                  onValue={(value) => put(index, x, value)}
                />
              </div>
              <div class="row">
                <button
                  type="button"
                  class="thin"
                  aria-label={`${WORDS.addAfter} corner ${index + 1}`}
                  onClick={() => addAfter(index)}
                >
                  {WORDS.addAfter}
                </button>
                <button
                  type="button"
                  class="thin"
                  aria-label={`${WORDS.takeOut} corner ${index + 1}`}
                  onClick={() => onOuter(outer.toSpliced(index, 1))}
                >
                  {WORDS.takeOut}
                </button>
              </div>
            </fieldset>
          </li>
        ))}
      </ol>
      {outer.length > 2 ? null : (
        <button type="button" class="thin" onClick={() => addAfter(outer.length - 1)}>
          {WORDS.addFirst}
        </button>
      )}
    </div>
  )
}
