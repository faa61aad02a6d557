import { useLocation } from 'preact-iso'
import { dayWords } from '@swardwright/present'
import { decides } from '../../state/access.ts'
import { takeWeek } from '../../state/weeks.ts'
import { WORDS } from './words.ts'

/** Takes a week and turns to the plan. */
export const TakeWeek = ({ firstDay }: { readonly firstDay: string }) => {
  const { route } = useLocation()
  if (!decides.value) return null
  return (
    <button
      type="button"
      aria-label={`${WORDS.take}: ${dayWords(firstDay)}`}
      onClick={() => {
        void takeWeek(firstDay)
        route('/plan')
      }}
    >
      {WORDS.take}
    </button>
  )
}
