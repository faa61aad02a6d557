import type { LocalPoint } from './plane.ts'

/** Why an outline is refused, with the place. `ring` 0 is the outer ring, 1 and up are the islands in their order. */
export type OutlineError =
  | { readonly type: 'tooFewPoints'; readonly ring: number; readonly points: number }
  | { readonly type: 'notFinite'; readonly ring: number; readonly point: number }
  | {
      /** Two edges cross or touch; `rings` says whose. */
      readonly type: 'selfCrossing'
      readonly rings: readonly [number, number]
      readonly at: LocalPoint
    }
  | {
      /** The ring is so thin that it cannot be a green: mean width `2 area / perimeter` under the limit. */
      readonly type: 'sliver'
      readonly ring: number
      readonly at: LocalPoint
      readonly areaM2: number
      readonly meanWidthM: number
      readonly minMeanWidthM: number
    }
  | { readonly type: 'tooLarge'; readonly areaM2: number; readonly maxAreaM2: number }
  | { readonly type: 'islandOutside'; readonly ring: number; readonly at: LocalPoint }
