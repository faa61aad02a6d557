import { execFileSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

/** A sum of variables and numbers; the engine's own, opaque here. */
export type Expression = {
  readonly plus: (other: Expression | number) => Expression
  readonly times: (by: number) => Expression
}

/** A variable that is 0 or 1. */
export type Literal = Expression & { readonly literalIndex: number }

export type Interval = { readonly index: number }

type Constraint = { readonly onlyEnforceIf: (literal: Literal) => unknown }

/** What the bench asks of the constraint model, as the package has it (or-tools-wasm 0.9.1, `cp-sat.d.ts`). */
export type Model = {
  readonly newIntVarFromDomain: (domain: unknown, name: string) => Expression
  readonly newIntVar: (least: number, most: number, name: string) => Expression
  readonly newBoolVar: (name: string) => Literal
  readonly newFixedSizeIntervalVar: (start: Expression | number, size: number, name: string) => Interval
  readonly newOptionalFixedSizeIntervalVar: (
    start: Expression,
    size: number,
    present: Literal,
    name: string,
  ) => Interval
  readonly newIntervalVar: (start: Expression, size: Expression, end: Expression, name: string) => Interval
  readonly newOptionalIntervalVar: (
    start: Expression,
    size: Expression,
    end: Expression,
    present: Literal,
    name: string,
  ) => Interval
  readonly addLinearConstraint: (
    expression: Expression,
    least: number,
    most: number,
    domain?: readonly number[],
  ) => Constraint
  readonly addNoOverlap: (intervals: readonly Interval[]) => unknown
  readonly addCumulative: (
    intervals: readonly Interval[],
    demands: readonly number[],
    capacity: number,
  ) => unknown
  readonly addReservoirConstraint: (
    times: readonly Expression[],
    changes: readonly number[],
    least: number,
    most: number,
  ) => unknown
  readonly addExactlyOne: (literals: readonly Literal[]) => unknown
  readonly addMaxEquality: (target: Expression, of: readonly Expression[]) => unknown
  readonly minimize: (expression: Expression) => void
  /** A value to begin at; the search is free to leave it. */
  readonly addHint: (variable: Expression, value: number) => void
}

export type Solver = {
  readonly solve: (model: Model, options: Readonly<Record<string, unknown>>) => Promise<unknown>
  readonly statusName: (status: unknown) => string
  readonly value: (expression: Expression) => number
  readonly objectiveValue: () => number
  readonly bestObjectiveBound: () => number
}

/** The general engine, ready to be used. */
export type Engine = {
  readonly CpModel: new () => Model
  readonly CpSolver: new () => Solver
  readonly Domain: { readonly fromIntervals: (intervals: readonly (readonly number[])[]) => unknown }
}

const folder = (path: string): string => fileURLToPath(new URL(`../peers/${path}`, import.meta.url))

const ENTRY = 'node_modules/or-tools-wasm/build/javascript/node/cp-sat.js'

/** Makes sure that the engine is there; installs it first where it is missing. Its name, or why it can't be had. */
export const engineAtHand = (): { readonly name: string } | string => {
  try {
    if (!existsSync(folder(ENTRY)))
      execFileSync('npm', ['ci', '--no-audit', '--no-fund'], { cwd: folder('.'), stdio: ['ignore', 2, 2] })
    const { version } = JSON.parse(
      readFileSync(folder('node_modules/or-tools-wasm/package.json'), 'utf8'),
    ) as { readonly version: string }
    return { name: `CP-SAT (or-tools-wasm ${version})` }
  } catch (error) {
    return `the general engine cannot be had: ${error instanceof Error ? error.message : String(error)}`
  }
}

/** Loads the engine. */
export const loadEngine = async (): Promise<Engine> => {
  const engine = (await import(new URL(`../peers/${ENTRY}`, import.meta.url).href)) as Engine
  // The first call compiles the engine; that is no part of any week.
  await new engine.CpSolver().solve(new engine.CpModel(), { numSearchWorkers: 1, maxTimeInSeconds: 1 })
  return engine
}
