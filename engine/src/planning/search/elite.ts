import type { Random } from './random.ts'

/** The best few different solutions met so far, from which a search may start again. */
export type Elite<T> = {
  /** Lets a solution in when there is room or when it beats the worst; one that is equal to a member (by `isSame`) only replaces it when cheaper. Tells whether it got in. */
  readonly offer: (cost: number, solution: T) => boolean
  /** Any member, each as likely; undefined while there is none. */
  readonly any: (random: Random) => T | undefined
}

/** An empty elite set of at most `size` members. */
export const eliteOf = <T>(size: number, isSame: (a: T, b: T) => boolean): Elite<T> => {
  const held: { readonly cost: number; readonly solution: T }[] = []
  const offer = (cost: number, solution: T): boolean => {
    const twin = held.findIndex((member) => isSame(member.solution, solution))
    const worst = held.at(-1)
    const rival = twin >= 0 ? held[twin] : held.length >= size ? worst : undefined
    if (rival !== undefined && cost >= rival.cost) return false
    if (rival !== undefined) held.splice(held.indexOf(rival), 1)
    const after = held.findIndex((member) => member.cost > cost)
    held.splice(after < 0 ? held.length : after, 0, { cost, solution })
    return true
  }
  return {
    offer,
    any: (random) => (held.length === 0 ? undefined : held[random.below(held.length)]?.solution),
  }
}
