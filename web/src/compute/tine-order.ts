import type { TineNeed, TineStore } from '@swardwright/engine'

/** One kind of tine: what the prescription wears of it, and what is counted in the stores. */
export type TineOrder = {
  readonly holeDiameterMm: number
  readonly coreDiameterMm: number
  readonly needSets: number
  readonly greens: number
  readonly haveSets: number
  readonly comingSets: number
  /** Whole sets to order; 0 when there are enough. */
  readonly orderSets: number
  /** The entries of this kind; none where it is asked for and not counted. */
  readonly stores: readonly TineStore[]
}

type Tine = Pick<TineNeed, 'holeDiameterMm' | 'coreDiameterMm'>

const isKind =
  (tine: Tine) =>
  (other: Tine): boolean =>
    other.holeDiameterMm === tine.holeDiameterMm && other.coreDiameterMm === tine.coreDiameterMm

/** Sets under this are rounding. */
const ROUNDING_SETS = 1e-6

const orderOf = (tine: Tine, need: TineNeed | undefined, stores: readonly TineStore[]): TineOrder => {
  const haveSets = stores.reduce((sum, { sets }) => sum + sets, 0)
  const comingSets = stores
    .flatMap(({ deliveries }) => deliveries)
    .reduce((sum, delivery) => sum + delivery.sets, 0)
  const needSets = need?.sets ?? 0
  return {
    holeDiameterMm: tine.holeDiameterMm,
    coreDiameterMm: tine.coreDiameterMm,
    needSets,
    greens: need?.greens ?? 0,
    haveSets,
    comingSets,
    orderSets: Math.max(0, Math.ceil(needSets - haveSets - comingSets - ROUNDING_SETS)),
    stores,
  }
}

/** Every kind that is asked for or counted, those asked for first. */
export const tineOrders = (
  needs: readonly TineNeed[],
  stores: readonly TineStore[],
): readonly TineOrder[] => {
  const kinds: Tine[] = []
  for (const tine of [...needs, ...stores]) if (!kinds.some(isKind(tine))) kinds.push(tine)
  return kinds.map((tine) => orderOf(tine, needs.find(isKind(tine)), stores.filter(isKind(tine))))
}
