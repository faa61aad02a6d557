import type { Doing, Work } from './work.ts'

/** How each job is done, fetched when it is first asked for: a first visit needs figures and a plan, not the rest. */
export const JOBS: { readonly [J in keyof Work]: () => Promise<Doing<J>> } = {
  figures: async () => (await import('./jobs/figures.ts')).figures,
  plan: async () => (await import('./jobs/planning.ts')).plan,
  check: async () => (await import('./jobs/planning.ts')).check,
  replan: async () => (await import('./jobs/replanning.ts')).replan,
  day: async () => (await import('./jobs/replanning.ts')).day,
  bailOut: async () => (await import('./jobs/replanning.ts')).bailOut,
  why: async () => (await import('./jobs/replanning.ts')).why,
  risk: async () => (await import('./jobs/risk.ts')).risk,
  safePlan: async () => (await import('./jobs/risk.ts')).safePlan,
  whatIf: async () => (await import('./jobs/risk.ts')).whatIf,
  weeks: async () => (await import('./jobs/weeks.ts')).weeks,
  origin: async () => {
    const { originOf } = await import('./origin.ts')
    return ({ name, input }) => originOf(name, input)
  },
  climate: async () => (await import('./climate.ts')).climateOf,
  chances: async () => (await import('./climate.ts')).chancesOf,
  readCourse: async () => (await import('./jobs/reading.ts')).readCourse,
  readMap: async () => (await import('./jobs/reading.ts')).readMap,
  runs: async () => (await import('./runs.ts')).greenRuns,
}
