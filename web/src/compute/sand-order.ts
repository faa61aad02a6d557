import type { SandStore } from '@swardwright/engine'
import type { BandT } from './figures.ts'

/** What to order of one kind of sand, for what the prescription takes. Dry tonnes. */
export type SandOrder = {
  readonly store: SandStore
  readonly need: BandT
  readonly haveT: number
  readonly comingT: number
  /** Missing for the likely amount and for the high one; 0 when there is enough. */
  readonly shortLikelyT: number
  readonly shortHighT: number
  /** Whole lorry loads that cover the likely amount, and the high one. */
  readonly lorriesLikely: number
  readonly lorriesHigh: number
  /** What the bay can still take before any is used. */
  readonly roomT: number
}

/** A store against what is needed of its kind. Deliveries that are agreed count as there. */
export const sandOrder = (store: SandStore, need: BandT): SandOrder => {
  const comingT = store.deliveries.reduce((sum, delivery) => sum + delivery.massT, 0)
  const short = (wantedT: number): number => Math.max(0, wantedT - store.stockT - comingT)
  const [shortLikelyT, shortHighT] = [short(need.likelyT), short(need.highT)]
  return {
    store,
    need,
    haveT: store.stockT,
    comingT,
    shortLikelyT,
    shortHighT,
    lorriesLikely: Math.ceil(shortLikelyT / store.lorryT),
    lorriesHigh: Math.ceil(shortHighT / store.lorryT),
    roomT: Math.max(0, store.capacityT - store.stockT),
  }
}
