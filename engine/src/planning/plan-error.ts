import type { CalculationError } from '../catalogue/errors.ts'

/** Why no plan can be made from the input. Closed; `present` words it. */
export type PlanError =
  | { readonly type: 'badStart'; readonly received: string }
  | { readonly type: 'badDays'; readonly received: number; readonly min: number; readonly max: number }
  | { readonly type: 'unknownGreen'; readonly group: string; readonly green: string }
  | { readonly type: 'chainIncomplete'; readonly group: string; readonly missing: 'opens' | 'finishes' }
  | {
      readonly type: 'chainDisordered'
      readonly group: string
      readonly early: 'clears' | 'dresses' | 'finishes'
    }
  | {
      readonly type: 'toolMissing'
      readonly group: string
      readonly operation: string
      readonly tool: 'tines' | 'blades'
    }
  | { readonly type: 'calculation'; readonly green: string; readonly error: CalculationError }
  | { readonly type: 'threshold'; readonly error: CalculationError }
  | { readonly type: 'noPeople' }
  | {
      readonly type: 'badPin'
      readonly green: string
      readonly because: 'notPlanned' | 'outOfDays' | 'otherDay'
    }
