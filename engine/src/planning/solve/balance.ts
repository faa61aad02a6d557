import type { Ground } from './ground.ts'

/** Parts into which the work of one operation is split while it is shared out. */
const PARTS = 60

/** Minutes that a machine's ways take beside each piece of work: an average, only for the sharing out. */
const WAY_MIN = 5

/** Minutes of people for one step: work by the crew, the way, and for a dressing the trip to the bay. */
const stepMin = (ground: Ground, step: number): number => {
  const choice = ground.choiceFirst[step] ?? 0
  const machine = ground.choiceMachine[choice] ?? 0
  const trip = ground.needsLoad[step] === 1 ? (ground.loadMin[machine] ?? 0) + WAY_MIN : 0
  return (ground.leastMin[step] ?? 0) * (ground.crew[machine] ?? 1) + WAY_MIN + trip
}

/** Shares of the work as it is handed out: by person and operation, in parts; and what each person carries in all. */
type Shares = { readonly parts: Int32Array; readonly load: Float64Array; readonly partMin: Float64Array }

const trainedFor = (ground: Ground, operation: number): Uint8Array =>
  ground.skilled.subarray(ground.skillFirst[operation] ?? 0, ground.skillFirst[operation + 1] ?? 0)

const lightest = (people: Uint8Array, load: Float64Array): number =>
  people.reduce((best, person) => ((load[person] ?? 0) < (load[best] ?? 0) ? person : best), people[0] ?? 0)

const hand = (ground: Ground, shares: Shares, operation: number, person: number, sign: 1 | -1): void => {
  const at = person * ground.operations + operation
  shares.parts[at] = (shares.parts[at] ?? 0) + sign
  shares.load[person] = (shares.load[person] ?? 0) + sign * (shares.partMin[operation] ?? 0)
}

/** Hands parts on from those who carry much to those who carry little, as long as that evens the loads. */
const even = (ground: Ground, shares: Shares): void => {
  const { load, partMin, parts } = shares
  for (let round = 0; round < PARTS * ground.operations; round++) {
    let moved = false
    for (let operation = 0; operation < ground.operations; operation++) {
      const people = trainedFor(ground, operation)
      const to = lightest(people, load)
      const from = people.reduce(
        (most, person) =>
          (parts[person * ground.operations + operation] ?? 0) > 0 && (load[person] ?? 0) > (load[most] ?? 0)
            ? person
            : most,
        to,
      )
      if ((load[from] ?? 0) - (load[to] ?? 0) <= (partMin[operation] ?? 0)) continue
      hand(ground, shares, operation, from, -1)
      hand(ground, shares, operation, to, 1)
      moved = true
    }
    if (!moved) return
  }
}

/**
 * For which work each person is best not taken, minutes by person and operation: all work is shared out so that everybody carries about the same, the operations that few
 * are trained for first; whoever gets little of an operation is shunned for it by up to `mostMin`. So those who alone can do one thing are kept for it.
 */
export const balancedShun = (ground: Ground, mostMin: number): Int32Array => {
  const minutes = new Float64Array(ground.operations)
  for (let step = 0; step < ground.steps; step++) {
    const operation = ground.operation[step] ?? 0
    minutes[operation] = (minutes[operation] ?? 0) + stepMin(ground, step)
  }
  const shares: Shares = {
    parts: new Int32Array(ground.people * ground.operations),
    load: new Float64Array(ground.people),
    partMin: minutes.map((all) => all / PARTS),
  }
  const scarceFirst = [...minutes.keys()]
    .filter((operation) => (minutes[operation] ?? 0) > 0)
    .sort((a, b) => trainedFor(ground, a).length - trainedFor(ground, b).length || a - b)
  for (const operation of scarceFirst)
    for (let part = 0; part < PARTS; part++)
      hand(ground, shares, operation, lightest(trainedFor(ground, operation), shares.load), 1)
  even(ground, shares)
  return shares.parts.map((part, at) => {
    const operation = at % ground.operations
    const people = trainedFor(ground, operation)
    const most = people.reduce(
      (max, person) => Math.max(max, shares.parts[person * ground.operations + operation] ?? 0),
      1,
    )
    return Math.round(mostMin * (1 - part / most))
  })
}
