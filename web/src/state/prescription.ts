import { computed } from '@preact/signals'
import type { Prescription } from '@swardwright/engine'
import { facts } from './journal.ts'
import { record } from './record.ts'

/** The prescription in force; null until one is written. */
export const prescription = computed(() => facts.value.prescription?.value ?? null)

/** Writes the prescription down as it stands now. */
export const settlePrescription = (changed: Prescription): Promise<string> =>
  record('prescriptionSettled', { prescription: changed })
