import { JOBS } from './jobs.ts'
import type { Ask, Reply } from './protocol.ts'

/** The worker's side of the port: fetches the code for what it is asked, runs it, and answers. */
const answer = (reply: Reply): void => postMessage(reply)

/** The port has typed the input by the name of the job. */
type AnyJob = (input: unknown, onProgress: (progress: unknown) => void) => unknown

const run = (job: AnyJob, { id, input }: Ask): void => {
  try {
    const output = job(input, (progress) => answer({ id, kind: 'progress', progress }))
    answer({ id, kind: 'answer', output })
  } catch (error) {
    answer({ id, kind: 'fault', message: error instanceof Error ? error.message : String(error) })
  }
}

addEventListener('message', ({ data }: MessageEvent<Ask>) => {
  JOBS[data.job]().then(
    (job) => run(job as AnyJob, data),
    () => answer({ id: data.id, kind: 'missing' }),
  )
})
