import { computePort, type ComputePort } from '../compute/port.ts'
import { isPartMissing } from './missing-part.ts'

const engine = (name: string): ComputePort =>
  computePort(new Worker(new URL('../compute/worker.ts', import.meta.url), { type: 'module', name }), () => {
    isPartMissing.value = true
  })

/** The engine at work beside the page, for answers that a person waits for: figures, calculations, reading a file. */
export const compute = engine('figures')

/** A second engine for planning and checking, which take seconds, so that figures never wait for them. */
export const computeLong = engine('planning')
