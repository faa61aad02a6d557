import * as v from 'valibot'
import type { CalculationError } from '../catalogue/errors.ts'
import { notDefined } from '../catalogue/not-defined.ts'
import { figure, quantity, words, wordsOrNull } from '../catalogue/quantity.ts'
import { ok, type Result } from '../result.ts'
import type { TargetRange } from './reading-summary.ts'

/** The club's own target range as an optional input. There is no default: no range is accepted everywhere. */
export const targetRange = (unit: string, max: number) =>
  v.optional(
    v.pipe(
      v.strictObject({
        low: quantity({ meaning: "Lower end of the club's own target", unit, min: 0, max }),
        high: quantity({ meaning: "Upper end of the club's own target", unit, min: 0, max }),
      }),
      v.description("The club's own target range"),
    ),
  )

/** Errors: `notDefined` when the lower end is above the upper. */
export const checkedTarget = (
  target: TargetRange | undefined,
  unit: string,
): Result<TargetRange | undefined, CalculationError> =>
  target !== undefined && target.low > target.high
    ? notDefined('target.low', unit, `the target starts at ${target.low} but ends at ${target.high} ${unit}`)
    : ok(target)

/** Outputs that say where something stands against the target. */
export const standingOutputs = {
  standing: wordsOrNull("Against the club's own target: below, inside or above; null without a target"),
  standingReason: wordsOrNull('Why there is no standing'),
}

export const NO_TARGET = "the club's own target is not given"

/** Outputs common to rounds of readings. */
export const summaryOutputs = (unit: string) => ({
  mean: figure({ meaning: 'Mean of the readings', unit }),
  lowest: figure({ meaning: 'Lowest reading', unit }),
  highest: figure({ meaning: 'Highest reading', unit }),
  deviation: figure({ meaning: 'Spread of the readings (standard deviation)', unit }),
  count: figure({ meaning: 'Number of readings', unit: '1' }),
  insideShare: v.nullable(figure({ meaning: 'Share of readings inside the target', unit: '1' })),
  unit: words('Unit of the readings'),
  ...standingOutputs,
})
