/** Benchmarks by name; each prints its figures and a ratio to a peer measured in the same run. */
const BENCHES: Readonly<
  Record<string, () => Promise<{ readonly run: (argv: readonly string[]) => Promise<number> }>>
> = {
  fold: () => import('./fold.ts'),
  ground: () => import('./ground.ts'),
  scheduling: () => import('./scheduling.ts'),
  risk: () => import('./risk.ts'),
  greens: () => import('./greens.ts'),
  replan: () => import('./replan.ts'),
  latency: () => import('./latency.ts'),
}

const [name = '', ...rest] = process.argv.slice(2)
const bench = BENCHES[name]
if (bench === undefined) {
  process.stderr.write(`bench is followed by one of ${Object.keys(BENCHES).join(', ')}\n`)
  process.exitCode = 2
} else process.exitCode = await (await bench()).run(rest)
