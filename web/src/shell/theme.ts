import { signal } from '@preact/signals'
import { keepText, keptText } from '../state/kept-text.ts'

/** The person's choice of light: as the device wishes, or fixed. */
export type Theme = 'device' | 'day' | 'night'

const KEY = 'swardwright.theme'

const isTheme = (text: string | null): text is Theme =>
  text === 'device' || text === 'day' || text === 'night'

/** What is shown now. Kept on this device only: the shed's screen and the manager's phone differ. */
export const theme = signal<Theme>('device')

/** Shows the page by day, by night or as the device wishes, and remembers it where the device can remember. */
export const setTheme = (chosen: Theme): void => {
  theme.value = chosen
  if (chosen === 'device') delete document.documentElement.dataset['twin']
  else document.documentElement.dataset['twin'] = chosen
  keepText(KEY, chosen)
}

/** Reads the remembered choice once at the start. */
export const restoreTheme = (): void => {
  const kept = keptText(KEY)
  if (isTheme(kept)) setTheme(kept)
}
