import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64'
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import { fail, ok, type Result } from '../result.ts'
import type { CalculationError } from './errors.ts'
import type { Item } from './item.ts'
import { notDefined } from './not-defined.ts'
import { runItem } from './run.ts'
import { spreadAnswers } from './spread.ts'
import { triangleAt, withNumbers, type ThreePoint, type UncertainField } from './three-point.ts'

/** Seed and number of draws for uncertain inputs. */
export type DrawOptions = {
  /** Any whole number; the same seed gives the same answer to the last digit on one machine, to 1e-9 on all. */
  readonly seed?: number
  /** 100 to 100,000. */
  readonly draws?: number
}

/** Used where the caller names none. */
export const DEFAULT_SEED = 20_260_101
export const DEFAULT_DRAWS = 1000
const FEWEST_DRAWS = 100
const MOST_DRAWS = 100_000

type Corner = keyof ThreePoint
const CORNERS: readonly Corner[] = ['low', 'typical', 'high']

const numbersAt = (
  fields: readonly UncertainField[],
  numberOf: (field: UncertainField) => number,
): ReadonlyMap<object, number> => new Map(fields.map((field) => [field.at, numberOf(field)]))

/** The range of draws asked for, checked. */
const drawsOf = ({
  seed = DEFAULT_SEED,
  draws = DEFAULT_DRAWS,
}: DrawOptions): Result<{ seed: number; draws: number }, CalculationError> => {
  if (!Number.isSafeInteger(draws) || draws < FEWEST_DRAWS || draws > MOST_DRAWS)
    return fail({
      type: 'outOfRange',
      field: 'draws',
      unit: '1',
      min: FEWEST_DRAWS,
      max: MOST_DRAWS,
      received: draws,
    })
  if (!Number.isSafeInteger(seed))
    return fail({
      type: 'wrongType',
      field: 'seed',
      unit: '1',
      expected: 'a whole number',
      received: String(seed),
    })
  return ok({ seed, draws })
}

/** Low, typical and high of one field in order. */
const inOrder = (fields: readonly UncertainField[]): Result<undefined, CalculationError> => {
  const wrong = fields.find(({ value }) => !(value.low <= value.typical && value.typical <= value.high))
  if (wrong === undefined) return ok(undefined)
  const { low, typical, high } = wrong.value
  return notDefined(
    wrong.field,
    wrong.unit,
    `low, typical and high must not fall: ${low}, ${typical}, ${high}`,
  )
}

/** An error of one corner, with the corner in the name of the field if the field is an uncertain one. */
const named = (
  error: CalculationError,
  fields: readonly UncertainField[],
  corner: Corner,
): CalculationError =>
  'field' in error && error.type !== 'notDefined' && fields.some(({ field }) => field === error.field)
    ? { ...error, field: `${error.field}.${corner}` }
    : error

/** Says that a draw, not the input as typed, could not be computed. */
const partly = (error: CalculationError): CalculationError =>
  error.type === 'notDefined' ? { ...error, reason: `in part of the ranges given, ${error.reason}` } : error

/** The answer at each corner (all low, all typical, all high); the first that fails is the error. */
const typicalAnswer = (
  item: Item,
  input: unknown,
  fields: readonly UncertainField[],
): Result<unknown, CalculationError> => {
  let answer: Result<unknown, CalculationError> = ok(undefined)
  for (const corner of CORNERS) {
    const result = runItem(
      item,
      withNumbers(
        input,
        numbersAt(fields, ({ value }) => value[corner]),
      ),
    )
    if (!result.ok)
      return fail(
        corner === 'typical'
          ? named(result.error, fields, corner)
          : partly(named(result.error, fields, corner)),
      )
    if (corner === 'typical') answer = result
  }
  return answer
}

/**
 * Runs an item whose input holds uncertain numbers: independent draws from the triangle over low, typical and high of each, the item for
 * every draw, and of each number in the answers the 10th, 50th and 90th percentile. Counts are rounded to whole numbers after drawing.
 * Errors: a corner outside its range (`depthMm.high`); values that fall from low to high; draws for which the item is not defined.
 */
export const runUncertain = (
  item: Item,
  input: unknown,
  fields: readonly UncertainField[],
  options: DrawOptions,
): Result<unknown, CalculationError> => {
  const asked = drawsOf(options)
  if (!asked.ok) return asked
  const ordered = inOrder(fields)
  if (!ordered.ok) return ordered
  const expected = typicalAnswer(item, input, fields)
  if (!expected.ok) return expected
  const random = xoroshiro128plus(asked.value.seed)
  const drawn = ({ value, whole }: UncertainField): number => {
    const number = triangleAt(value, uniformFloat64(random))
    return whole ? Math.round(number) : number
  }
  const answers: unknown[] = []
  for (let i = 0; i < asked.value.draws; i++) {
    const answer = runItem(item, withNumbers(input, numbersAt(fields, drawn)))
    if (!answer.ok) return fail(partly(answer.error))
    answers.push(answer.value)
  }
  return ok(spreadAnswers(expected.value, answers))
}
