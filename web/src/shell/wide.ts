import { signal } from '@preact/signals'
import { TWO_COLUMNS_PX } from '@swardwright/present'

const query = matchMedia(`(min-width: ${TWO_COLUMNS_PX}px)`)

/** True where two columns fit: a desk or a tablet, not a phone. */
export const isWide = signal(query.matches)

query.addEventListener('change', () => {
  isWide.value = query.matches
})
