import type { ProblemGreen } from '../problem.ts'

/** A green that nothing more is done on: no machine can do its steps. What has been done of it stands. */
export const notWorked = (green: ProblemGreen): ProblemGreen => ({
  ...green,
  steps: green.steps.map((step) => ({ ...step, minutesByMachine: new Map() })),
})
