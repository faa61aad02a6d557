/** Bits of n well mixed, 0 to 1 (the finaliser of MurmurHash3, A. Appleby, public domain). Integers only: alike on every machine. */
const mixed = (n: number): number => {
  let bits = Math.imul(n, 0x9e3779b1)
  bits = Math.imul(bits ^ (bits >>> 16), 0x85ebca6b)
  bits = Math.imul(bits ^ (bits >>> 13), 0xc2b2ae35)
  return ((bits ^ (bits >>> 16)) >>> 0) / 2 ** 32
}

/** How far a point may leave its even place, as a share of the side. */
const WANDER = 0.09

/**
 * Scatter without chance, for grains and fibres, so that the same input always draws the same picture. Each n gives a point of the unit
 * square. The additive recurrence of the plastic number (M. Roberts, 'The unreasonable effectiveness of quasirandom sequences', 2018)
 * spreads them evenly; a little wandering hides its rows.
 */
export const scattered = (n: number): { readonly u: number; readonly v: number } => ({
  u: (0.5 + n * 0.7548776662466927 + WANDER * mixed(2 * n)) % 1,
  v: (0.5 + n * 0.5698402909980532 + WANDER * mixed(2 * n + 1)) % 1,
})

/** The same on one axis, 0 to 1: for heights and leanings along a row. */
export const scatteredOnLine = (n: number): number => mixed(3 * n + 7)
