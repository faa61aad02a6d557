/** Chances of a wet day: after one, two, and three or more dry days; and after a wet one. */
export type WetChances = {
  readonly wetAfterDry: readonly [number, number, number]
  readonly wetAfterWet: number
}

/** A chance with its logit moved. */
export const shiftedChance = (chance: number, logit: number): number => {
  const odds = (chance / (1 - chance)) * Math.exp(logit)
  return odds / (1 + odds)
}

/** All chances with their logits moved alike: a wetter or a drier month. */
export const shiftedChances = ({ wetAfterDry, wetAfterWet }: WetChances, logit: number): WetChances => {
  const [one, two, more] = wetAfterDry
  return {
    wetAfterDry: [shiftedChance(one, logit), shiftedChance(two, logit), shiftedChance(more, logit)],
    wetAfterWet: shiftedChance(wetAfterWet, logit),
  }
}

/** Share of wet days in the long run: mean wet spell over mean wet and dry spell together. */
export const wetShareOf = ({ wetAfterDry: [one, two, more], wetAfterWet }: WetChances): number => {
  const dry = 1 + (1 - one) + ((1 - one) * (1 - two)) / more
  const wet = 1 / (1 - wetAfterWet)
  return wet / (wet + dry)
}

/**
 * Variance of the number of wet days in `days` days that chance alone gives: `n p (1 - p) + 2 sum (n - k) p (p_k - p)`, where `p_k` is the chance
 * of a wet day `k` days after a wet one, followed through the four states of the chain.
 */
export const wetCountVariance = (chances: WetChances, days: number): number => {
  const {
    wetAfterDry: [one, two, more],
    wetAfterWet,
  } = chances
  const p = wetShareOf(chances)
  let variance = days * p * (1 - p)
  let [wet, dry1, dry2, dry3] = [1, 0, 0, 0]
  for (let k = 1; k < days; k++) {
    const next = wet * wetAfterWet + dry1 * one + dry2 * two + dry3 * more
    ;[dry3, dry2, dry1] = [dry3 * (1 - more) + dry2 * (1 - two), dry1 * (1 - one), wet * (1 - wetAfterWet)]
    wet = next
    variance += 2 * (days - k) * p * (wet - p)
  }
  return variance
}
