import type { Plan } from '@swardwright/engine'
import { Part } from '../../parts/Page.tsx'
import { greenNames } from '../../state/course.ts'
import { REASON_WORDS, WORDS } from './words.ts'

/** Greens that the plan leaves out, each with its reason. */
export const LeftOut = ({ plan }: { readonly plan: Plan }) =>
  plan.unplanned.length === 0 ? null : (
    <Part title={WORDS.left}>
      <ul class="rows">
        {plan.unplanned.map(({ green, reason }) => (
          <li key={green}>
            <div class="line">
              <span class="name">{greenNames.value.get(green) ?? green}</span>
              <span>{REASON_WORDS[reason]}</span>
            </div>
          </li>
        ))}
      </ul>
    </Part>
  )
