import { figureOf, shareWords, unitMark } from '@swardwright/present'
import type { GreenFigures } from '../../compute/figures.ts'
import { Asked } from '../../parts/Figure.tsx'
import { massWords } from '../../parts/quantity-words.ts'
import { greenName, greensInOrder, units } from '../../state/course.ts'
import { WORDS } from './words.ts'

const Row = ({ one }: { readonly one: GreenFigures }) => {
  const out = one.out === null ? null : massWords(one.out.organicKg)
  return (
    <tr>
      <th scope="row">
        <a href={`/green/${encodeURIComponent(one.green)}`}>{greenName(one.green)}</a>
      </th>
      <td class="number">
        <Asked from={one.from.share ?? undefined}>{shareWords(one.shareSummed)}</Asked>
      </td>
      <td class="number">
        <Asked from={one.from.coresOut ?? undefined}>
          {out === null ? '–' : `${out.figure} ${out.unit}`}
        </Asked>
      </td>
      <td class="number">
        <Asked from={one.from.sand ?? undefined}>{figureOf('sand', one.sand.likelyT, units.value)}</Asked>
      </td>
      <td class="number">{one.sand.loads}</td>
    </tr>
  )
}

/** The figures of the whole course, green by green; each can be asked where it comes from. */
export const GreenByGreen = ({ figures }: { readonly figures: readonly GreenFigures[] }) => {
  const byId = new Map(figures.map((one) => [one.green, one]))
  return (
    <>
      <p class="small quiet">{WORDS.byGreenLead}</p>
      <div class="scroll-x" tabIndex={0} role="region" aria-label={WORDS.byGreen}>
        <table>
          <thead>
            <tr>
              <th scope="col">green</th>
              <th scope="col" class="number">
                opened
              </th>
              <th scope="col" class="number">
                taken out
              </th>
              <th scope="col" class="number">
                sand, {unitMark('sand', units.value)}
              </th>
              <th scope="col" class="number">
                loads
              </th>
            </tr>
          </thead>
          <tbody>
            {greensInOrder.value.map(({ id }) => {
              const one = byId.get(id)
              return one === undefined ? null : <Row key={id} one={one} />
            })}
          </tbody>
        </table>
      </div>
    </>
  )
}
