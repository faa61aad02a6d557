import { signal } from '@preact/signals'
import type { About } from './words.ts'

/** The figure of a week that somebody asked about; null while nobody does. */
export const askedWeek = signal<{ readonly firstDay: string; readonly about: About } | null>(null)
