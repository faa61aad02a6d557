import type { Green } from '@swardwright/engine'
import { decimal, listed, quantityWords } from '@swardwright/present'
import { latestTest } from '../../compute/from-catalogue.ts'
import { greensInOrder, units } from '../../state/course.ts'

const SHADE = { open: '', part: 'part shade', dense: 'dense shade' } as const

/** What is worth knowing of a green in half a line. */
const about = (green: Green): string => {
  const top = latestTest(green)?.layers[0]
  return listed(
    [
      green.weak ? 'weak' : '',
      SHADE[green.shade],
      green.drainage === 'poor' ? 'drains poorly' : '',
      green.rootzone.kind === 'soil' ? 'soil' : '',
      top === undefined ? 'not tested' : `${decimal(top.organicPercent, 1)} % organic on top`,
    ].filter((word) => word !== ''),
  )
}

/** All greens in playing order. */
export const GreenList = () => (
  <ul class="rows">
    {greensInOrder.value.map((green) => (
      <li key={green.id}>
        <a href={`/green/${encodeURIComponent(green.id)}`}>
          <span class="number">{green.hole ?? '–'}</span>
          <span class="name">{green.name}</span>
          <span class="rest small">{quantityWords('area', green.areaM2, units.value)}</span>
          <span class="below small quiet">{about(green)}</span>
        </a>
      </li>
    ))}
  </ul>
)
