import { isOperation, type Operation, type PlanTask } from '@swardwright/engine'

/** One covering of one green, as entries name it. */
export type Covering = {
  readonly green: string
  readonly operation: Operation
  readonly pass?: number
  readonly load?: number
}

/** The covering that a planned task is; null for moves, loads and setting up, which nobody ticks. */
export const coveringOf = ({ green, operation, pass, load }: PlanTask): Covering | null =>
  green === null || !isOperation(operation)
    ? null
    : {
        green,
        operation,
        ...(pass === null ? {} : { pass }),
        ...(load === null ? {} : { load }),
      }
