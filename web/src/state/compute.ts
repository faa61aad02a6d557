import { computePort, type ComputePort } from '../compute/port.ts'

/** The engine at work beside the page, so that the page never waits. */
export const compute: ComputePort = computePort(
  new Worker(new URL('../compute/worker.ts', import.meta.url), { type: 'module', name: 'engine' }),
)
