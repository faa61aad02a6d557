import { MACHINE_WORDS } from '@swardwright/present'
import type { Machine } from '@swardwright/engine'

/** All kinds of machine, in the order of the work. */
export const KINDS = Object.keys(MACHINE_WORDS) as readonly Machine['kind'][]
