import type { PlanError } from '@swardwright/engine'
import { planErrorWords } from '@swardwright/present'

/** Why no plan or figures can be made, as one sentence. */
export const planErrorSentence = (error: PlanError): string => planErrorWords(error)
