import type { PlanError } from '@swardwright/engine'
import { calculationErrorWords } from './calculation-words.ts'
import { EFFECT_WORDS } from './operation-words.ts'

const PIN_WORDS = {
  notPlanned: 'cannot be kept: nothing is to be done there',
  outOfDays: 'names a day outside the days of the plan',
  otherDay: 'names a minute of another day than its own',
} as const

/** One clear sentence, without a full stop, for why no plan can be made. */
export const planErrorWords = (error: PlanError): string => {
  switch (error.type) {
    case 'badStart':
      return `the start is '${error.received}'; it must be a day such as 2026-08-10`
    case 'badDays':
      return `the horizon is ${error.received} days; it must be a whole number from ${error.min} to ${error.max}`
    case 'unknownGreen':
      return `group '${error.group}' of the prescription names green '${error.green}', which the course does not have`
    case 'chainIncomplete':
      return `in the chain of group '${error.group}' no step ${EFFECT_WORDS[error.missing]}; give one of them the effect '${error.missing}'`
    case 'chainDisordered':
      return `in the chain of group '${error.group}' the step that ${EFFECT_WORDS[error.early]} stands before the one that opens the green or after the one that finishes it`
    case 'toolMissing':
      return `in group '${error.group}' the step '${error.operation}' has no ${error.tool}; give their settings`
    case 'calculation':
      return `green '${error.green}': ${calculationErrorWords(error.error)}`
    case 'threshold':
      return `a weather threshold of the course: ${calculationErrorWords(error.error)}`
    case 'badPin':
      return `the pin on green '${error.green}' ${PIN_WORDS[error.because]}`
    case 'noPeople':
      return 'the course has no people; a plan needs at least one'
  }
}
