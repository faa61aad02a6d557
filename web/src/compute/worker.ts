import type { Ask, Job, Reply } from './protocol.ts'
import { JOBS } from './work.ts'

/** The worker's side of the port: runs what it is asked, one after the other, and answers. */
const answer = (reply: Reply): void => postMessage(reply)

const run = (job: Job, input: unknown, onProgress: (progress: unknown) => void): unknown =>
  // The port has typed the input by the name of the job.
  (JOBS[job] as (input: unknown, onProgress: (progress: unknown) => void) => unknown)(input, onProgress)

addEventListener('message', ({ data }: MessageEvent<Ask>) => {
  const { id, job, input } = data
  try {
    const output = run(job, input, (progress) => answer({ id, kind: 'progress', progress }))
    answer({ id, kind: 'answer', output })
  } catch (error) {
    answer({ id, kind: 'fault', message: error instanceof Error ? error.message : String(error) })
  }
})
