/**
 * What can be wrong with the input of a calculation. Closed: every surface (CLI, HTTP, app) words these five.
 * `field` is a path in the input such as `layers[0].toMm`; `unit` is the field's unit ('1' for a share or a count).
 */
export type CalculationError =
  | { readonly type: 'unknownItem'; readonly name: string }
  | { readonly type: 'missing'; readonly field: string; readonly unit: string; readonly expected: string }
  | {
      readonly type: 'wrongType'
      readonly field: string
      readonly unit: string
      readonly expected: string
      readonly received: string
    }
  | {
      readonly type: 'outOfRange'
      readonly field: string
      readonly unit: string
      readonly min: number
      readonly max: number
      readonly received: number
    }
  | {
      /** The fields are each in range but do not go together, or the formula is not defined for them. */
      readonly type: 'notDefined'
      readonly field: string
      readonly unit: string
      /** One clear sentence with the limit, e.g. 'depthMm is 90 mm but the layers end at 80 mm'. */
      readonly reason: string
    }
