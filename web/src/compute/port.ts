import type { Ask, Job, Reply } from './protocol.ts'
import type { Work } from './work.ts'

type Waiting = {
  readonly onProgress: ((progress: unknown) => void) | undefined
  readonly resolve: (output: unknown) => void
  readonly reject: (error: Error) => void
}

/** The part of a Worker that the port needs; a test may stand in for it. */
export type WorkerLike = {
  postMessage(message: Ask): void
  addEventListener(type: 'message', listener: (event: { readonly data: Reply }) => void): void
  addEventListener(type: 'error', listener: (event: { readonly message: string }) => void): void
}

/** Asks a worker one job; resolves with the job's typed answer. Rejects for a fault in the program, and where the job's code can't be had. */
export type ComputePort = <J extends Job>(
  job: J,
  input: Work[J]['input'],
  onProgress?: (progress: Work[J]['progress']) => void,
) => Promise<Work[J]['output']>

const MISSING = 'A part of the app could not be fetched. Check the line, then try again.'

/** Ties questions and answers together by id over one worker. `onMissing` is told where the code for a job could not be fetched. */
export const computePort = (worker: WorkerLike, onMissing: () => void): ComputePort => {
  const waiting = new Map<number, Waiting>()
  let last = 0

  worker.addEventListener('message', ({ data }) => {
    const asked = waiting.get(data.id)
    if (asked === undefined) return
    if (data.kind === 'progress') return asked.onProgress?.(data.progress)
    waiting.delete(data.id)
    if (data.kind === 'answer') return asked.resolve(data.output)
    if (data.kind === 'missing') onMissing()
    asked.reject(new Error(data.kind === 'missing' ? MISSING : data.message))
  })
  worker.addEventListener('error', ({ message }) => {
    for (const asked of waiting.values()) asked.reject(new Error(message))
    waiting.clear()
  })

  return (job, input, onProgress) =>
    new Promise((resolve, reject) => {
      last += 1
      // The protocol ties the job's name to its types; the channel itself carries plain values.
      waiting.set(last, {
        onProgress: onProgress as ((progress: unknown) => void) | undefined,
        resolve: resolve as (output: unknown) => void,
        reject,
      })
      // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a worker is no window
      worker.postMessage({ id: last, job, input })
    })
}
