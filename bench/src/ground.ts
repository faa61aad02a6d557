import { bundled, inFreshPage } from './fresh-page.ts'
import { measureGround, SWEEP_WORDS, type GroundFigures } from './ground-work.ts'

const GOAL_MS = 200

/** Milliseconds of processor time: other programs on the machine count little. */
const processorMs = (): number => process.cpuUsage().user / 1000

const measureInBrowser = async (): Promise<GroundFigures> =>
  inFreshPage(await bundled('ground-page.ts'), (page) => page.evaluate<GroundFigures>('bench.figures'))

const linesOf = (figures: GroundFigures, where: string): readonly string[] => {
  const { greens, operations, rounds, firstMs, medianMs, leastMs, sweepMs } = figures
  return [
    `${greens} greens x ${operations} operations = ${greens * operations} passes, ${where}`,
    `best heading, runs, order and areas: ${medianMs.toFixed(0)} ms (median of ${rounds}, quickest ${leastMs.toFixed(0)}; first round ${firstMs.toFixed(0)} ms); goal ${GOAL_MS} ms ${medianMs <= GOAL_MS ? 'kept' : 'missed'}`,
    `plain raster sweep (${SWEEP_WORDS}): ${sweepMs.toFixed(0)} ms, ${(sweepMs / medianMs).toFixed(1)} times as long`,
  ]
}

/**
 * `bench ground [--browser]`: all operations of the chain over 19 greens, each at its best heading, against a plain raster sweep in the same
 * run; with `--browser` the same code in a browser's page, by the clock on the wall.
 */
export const run = async (argv: readonly string[]): Promise<number> => {
  const [flag, ...more] = argv
  if ((flag !== undefined && flag !== '--browser') || more.length > 0) {
    process.stderr.write(`unexpected '${more[0] ?? flag}'; bench ground takes only --browser\n`)
    return 2
  }
  const lines =
    flag === undefined
      ? linesOf(measureGround(processorMs), 'processor time on one core')
      : linesOf(await measureInBrowser(), 'in a browser, wall time')
  process.stdout.write(`${lines.join('\n')}\n`)
  return 0
}
