/** A piece of work with a release and a deadline, on one scale of capacity. */
export type Job = { readonly release: number; readonly deadline: number; readonly minutes: number }

/**
 * Whether all jobs can be done in time by one machine that may break off a job at any moment: earliest deadline first, which is best (Jackson 1955;
 * the preemptive bound of Carlier 1982 as a test). Jobs need not be in order.
 */
export const isInTime = (jobs: readonly Job[]): boolean => {
  const waiting = [...jobs].sort((a, b) => a.release - b.release)
  // Open jobs by deadline, the soonest last.
  const open: { deadline: number; left: number }[] = []
  let next = 0
  let now = 0
  while (next < waiting.length || open.length > 0) {
    const job = waiting[next]
    if (open.length === 0 && job !== undefined) now = Math.max(now, job.release)
    while (next < waiting.length && (waiting[next]?.release ?? 0) <= now) {
      const { deadline = 0, minutes = 0 } = waiting[next] ?? {}
      let at = open.length
      while (at > 0 && (open[at - 1]?.deadline ?? 0) < deadline) at--
      open.splice(at, 0, { deadline, left: minutes })
      next++
    }
    const first = open.at(-1)
    if (first === undefined) continue
    const until = Math.min(now + first.left, waiting[next]?.release ?? Infinity)
    first.left -= until - now
    now = until
    if (now > first.deadline || first.deadline - now < first.left) return false
    if (first.left <= 0) open.pop()
  }
  return true
}
