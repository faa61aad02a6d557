import type { CalculationError } from '@swardwright/engine'

/** A number is followed by its unit; a share or a count has none. */
const unitAfter = (unit: string): string => (unit === '1' ? '' : ` ${unit}`)

/** What is expected, with the unit where it is a number. */
const expectedWords = (expected: string, unit: string): string =>
  expected.startsWith('a number') ? `${expected}${unitAfter(unit)}` : expected

/** Numbers as they are typed: no thousands marks, since people copy them back into files and commands. */
const typed = (value: number, unit: string): string => `${String(value)}${unitAfter(unit)}`

const subjectOf = (field: string): string => (field === '' ? 'the input' : field)

/**
 * One clear sentence for what is wrong with the input of a calculation, without a full stop:
 * 'depthMm is 900 mm; it must be 1 to 450 mm'.
 */
export const calculationErrorWords = (error: CalculationError): string => {
  switch (error.type) {
    case 'unknownItem':
      return `there is no calculation called ${error.name}`
    case 'missing':
      return `${subjectOf(error.field)} is missing; it must be ${expectedWords(error.expected, error.unit)}`
    case 'wrongType':
      return `${subjectOf(error.field)} is ${error.received}; it must be ${expectedWords(error.expected, error.unit)}`
    case 'outOfRange':
      return `${subjectOf(error.field)} is ${typed(error.received, error.unit)}; it must be ${String(error.min)} to ${typed(error.max, error.unit)}`
    default:
      return error.reason
  }
}
