import type { Plan } from '@swardwright/engine'
import { planNames, unplannedSentence } from '@swardwright/present'
import { Part } from '../../parts/Page.tsx'
import { useCourse } from '../../state/course.ts'
import { WORDS } from './words.ts'

/** Greens that the plan leaves out, each with its reason. */
export const LeftOut = ({ plan }: { readonly plan: Plan }) => {
  const names = planNames(useCourse(), plan)
  return plan.unplanned.length === 0 ? null : (
    <Part title={WORDS.left}>
      <ul class="rows">
        {plan.unplanned.map((left) => (
          <li key={left.green}>
            <div class="line">{unplannedSentence(left, names)}.</div>
          </li>
        ))}
      </ul>
    </Part>
  )
}
