import { computePort, type ComputePort } from '../compute/port.ts'
import { isPartMissing } from './missing-part.ts'

const startWorker = (name: string): Worker =>
  new Worker(new URL('../compute/worker.ts', import.meta.url), { type: 'module', name })

const portOf = (worker: Worker): ComputePort =>
  computePort(worker, () => {
    isPartMissing.value = true
  })

const engine = (name: string): ComputePort => portOf(startWorker(name))

/** An engine that is started when it is first asked. */
const engineWhenAsked = (name: string): ComputePort => {
  let port: ComputePort | null = null
  return (job, input, onProgress) => (port ??= engine(name))(job, input, onProgress)
}

/** The engine at work beside the page, for answers that a person waits for: figures, calculations, reading a file. */
export const compute = engine('figures')

/** A second engine for planning and checking, which take seconds, so that figures never wait for them. */
export const computeLong = engine('planning')

/** A third for the skies that may come, which take seconds for every plan and are asked for by the opening page, so that planning and checking never wait for them. */
export const computeChances = engineWhenAsked('chances')

/** An engine for one long question, with a way to call it off: it ends with its worker. */
export const engineToStop = (name: string): { readonly ask: ComputePort; readonly stop: () => void } => {
  const worker = startWorker(name)
  return { ask: portOf(worker), stop: () => worker.terminate() }
}
