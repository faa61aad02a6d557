import { fork } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { compileProblem, isCleanSchedule, type Problem, type Schedule } from '@swardwright/engine'
import { cpuSince } from './cpu.ts'
import { loadEngine } from './greens-engine.ts'
import { beginAt } from './greens-hint.ts'
import { weekModel, type ModelFor } from './greens-model.ts'
import { rounded } from './rounded.ts'

/** A week put to the general engine. */
export type Asked = {
  readonly problem: Problem
  /** Whether the model says all that the checker asks: then the plan is checked. */
  readonly isFull: boolean
  /** By the clock. */
  readonly seconds: number
  /** A plan of the best class to begin at; null to begin from nothing. */
  readonly begun: Schedule | null
}

/** What the general engine found. */
export type Found = {
  /** `full`: the model says all that the checker asks, and its plan is checked. `relaxed`: it leaves rules out, so only its bound can be used. */
  readonly model: 'full' | 'relaxed'
  readonly status: string
  /** Whether it began at our plan, so that it could only better it. */
  readonly begunAtOurs: boolean
  readonly provenOptimal: boolean
  readonly finishMin: number | null
  /** What it has proven, whole minutes. */
  readonly boundMin: number | null
  /** Processor seconds. */
  readonly seconds: number
  /** The checker's word on its plan; null where there is none to check. */
  readonly clean: boolean | null
}

/** All greens, no fixture clash, one day each: what comes before the finish in the order of a plan's figures. */
const bestClass = (problem: Problem): ModelFor => ({
  greens: problem.greens.map((_, index) => index),
  keepFixtures: true,
  oneDay: true,
})

/** Searches a week with the general engine, in this process. */
const search = async ({ problem, isFull, seconds, begun }: Asked): Promise<Found> => {
  const engine = await loadEngine()
  const week = weekModel(engine, problem, bestClass(problem))
  if (begun !== null) beginAt(week, problem, begun)
  const solver = new engine.CpSolver()
  const mark = process.cpuUsage()
  const status = solver.statusName(
    await solver.solve(week.model, { numSearchWorkers: 1, maxTimeInSeconds: seconds, randomSeed: 1 }),
  )
  const used = cpuSince(mark)
  const isFound = status === 'OPTIMAL' || status === 'FEASIBLE'
  return {
    model: isFull ? 'full' : 'relaxed',
    status,
    begunAtOurs: begun !== null,
    provenOptimal: status === 'OPTIMAL',
    finishMin: isFound ? Math.round(solver.objectiveValue()) : null,
    boundMin: isFound || status === 'UNKNOWN' ? Math.ceil(solver.bestObjectiveBound() - 1e-6) : null,
    seconds: rounded(used, 2),
    clean: isFound && isFull ? isCleanSchedule(compileProblem(problem), week.scheduleOf(solver)) : null,
  }
}

const isChild = process.argv[1] === fileURLToPath(import.meta.url)
if (isChild)
  process.once('message', (asked: Asked) => {
    void search(asked).then((found) => process.send?.(found, () => process.exit(0)))
  })

/**
 * Searches a week with the general engine in a process of its own, which ends with the answer: its threads would go on after the limit and be counted, and paid for, by whoever
 * comes next. What it prints goes to standard error. Rejects when the process ends without an answer.
 */
export const askPeer = (asked: Asked): Promise<Found> =>
  new Promise((resolve, reject) => {
    const child = fork(fileURLToPath(import.meta.url), {
      serialization: 'advanced',
      stdio: ['ignore', 2, 2, 'ipc'],
    })
    child.once('message', (found: Found) => {
      resolve(found)
      child.kill()
    })
    child.once('exit', (code) => reject(new Error(`the general engine ended with ${code} and no answer`)))
    child.send(asked)
  })
