import type { ComponentChildren } from 'preact'
import { decides } from '../state/access.ts'

/**
 * Fields that only those who decide may change. Others read what stands in them: they can't be changed, and buttons that would change
 * something are left out, so that nothing is offered which the server would refuse.
 */
export const Deciding = (props: { readonly children: ComponentChildren }) =>
  decides.value ? (
    <>{props.children}</>
  ) : (
    <fieldset class="reads" disabled>
      {props.children}
    </fieldset>
  )
