import { conditionOf, lagOf, switchOf } from './arcs.ts'
import { entryOf, pop, REASON, type Bounds } from './bounds.ts'
import { explain, explainOverfull, NOT_NEEDED, type Needs, type Reasons } from './explain.ts'
import { NOGOOD_HEAD } from './nogoods.ts'

/** What was learnt from a clash. */
export type Lesson = {
  /** Facts that cannot all be true, (side, least) pairs: first the one that fails at the present level, then the one of the deepest other level. */
  facts: Int32Array
  count: number
  /** Level to go back to; -1 = there is no schedule at all. */
  level: number
  /** Number of levels that took part: the fewer, the longer it is worth keeping. */
  depth: number
  /** Sides that played a part, for the order of branching. */
  readonly met: Int32Array
  metCount: number
}

/** Analyses clashes of one search. */
export type Analyst = {
  /** Learns from the clash that the bounds (or, when `overfull` is 0 or more, the profile) hold. Takes entries of the present level off the trail. */
  readonly analyse: (overfull: number) => Lesson
}

/** Bound of a side when the present level began. */
const boundAtLevelStart = ({ value, last, trail, levelStart, level }: Bounds, side: number): number => {
  const start = level === 0 ? 0 : levelStart[level]!
  let bound = value[side]!
  for (let entry = last[side]!; entry >= start; entry = trail.earlier[entry]!) bound = trail.before[entry]!
  return bound
}

/** The nogood under construction, with the count of facts that became true at the present level. */
const draftOf = (bounds: Bounds, lesson: Lesson) => {
  const least = new Int32Array(bounds.value.length).fill(NOT_NEEDED)
  const isMet = new Uint8Array(least.length)
  const draft = { present: 0 }
  const need = (side: number, wanted: number): void => {
    if (wanted <= bounds.root[side]! || wanted <= least[side]!) return
    const atStart = boundAtLevelStart(bounds, side)
    if (least[side]! <= atStart && wanted > atStart) draft.present++
    if (isMet[side] === 0) {
      isMet[side] = 1
      lesson.met[lesson.metCount++] = side
    }
    least[side] = wanted
  }
  const needs: Needs = {
    least,
    need,
    chosen: new Int32Array(bounds.activities),
    rank: new Int32Array(bounds.activities),
  }
  const clear = (): void => {
    for (let at = 0; at < lesson.metCount; at++) {
      least[lesson.met[at]!] = NOT_NEEDED
      isMet[lesson.met[at]!] = 0
    }
    draft.present = 0
  }
  return { draft, needs, clear }
}

/** The deepest level of all needed facts. */
const deepestLevel = (bounds: Bounds, { least }: Needs, { met, metCount }: Lesson): number => {
  let deepest = 0
  for (let at = 0; at < metCount; at++) {
    const side = met[at]!
    if (least[side] === NOT_NEEDED) continue
    const entry = entryOf(bounds, side, least[side]!)
    if (entry >= 0) deepest = Math.max(deepest, bounds.trail.level[entry]!)
  }
  return deepest
}

/** Whether a fact is needed anyway, by another side than the one in question, or true at the root. */
const isGiven = (
  { bounds }: Reasons,
  least: Int32Array,
  asked: number,
  side: number,
  wanted: number,
): boolean => wanted <= bounds.root[side]! || (side !== asked && wanted <= least[side]!)

/** Whether a fact follows from the other needed ones by its own arc or nogood, and so may be left out. */
const followsFromRest = (reasons: Reasons, least: Int32Array, side: number): boolean => {
  const { bounds, arcs, nogoods } = reasons
  const entry = entryOf(bounds, side, least[side]!)
  if (entry < 0) return true
  const at = bounds.trail.at[entry]!
  const kind = bounds.trail.kind[entry]!
  if (kind === REASON.arc) {
    if (!isGiven(reasons, least, side, arcs.source[at]!, least[side]! - lagOf(arcs, at))) return false
    return (
      conditionOf(arcs, at) < 0 || isGiven(reasons, least, side, conditionOf(arcs, at), switchOf(arcs, at))
    )
  }
  if (kind !== REASON.nogood) return false
  const { data } = nogoods
  const end = at + NOGOOD_HEAD + 2 * data[at]!
  for (let fact = at + NOGOOD_HEAD; fact < end; fact += 2)
    if (data[fact] !== (side ^ 1) && !isGiven(reasons, least, side, data[fact]!, data[fact + 1]!))
      return false
  return true
}

/** Adds a fact to the lesson; the one of the deepest level so far takes the second place. */
const addFact = (lesson: Lesson, side: number, least: number, level: number): void => {
  const { facts } = lesson
  const place = 2 * lesson.count++
  facts[place] = side
  facts[place + 1] = least
  if (level <= lesson.level) return
  lesson.level = level
  facts[place] = facts[2]!
  facts[place + 1] = facts[3]!
  facts[2] = side
  facts[3] = least
}

/** Puts the needed facts in the lesson, the failing one first. `stamps` holds, by level, the last lesson that it took part in. */
const writeLesson = (
  reasons: Reasons,
  { least }: Needs,
  lesson: Lesson,
  failing: number,
  stamps: Int32Array,
  stamp: number,
): void => {
  const { bounds } = reasons
  lesson.facts[0] = failing
  lesson.facts[1] = least[failing]!
  lesson.count = 1
  lesson.level = 0
  lesson.depth = 1
  for (let at = 0; at < lesson.metCount; at++) {
    const side = lesson.met[at]!
    if (side === failing || least[side] === NOT_NEEDED) continue
    if (followsFromRest(reasons, least, side)) {
      // No longer there for others to follow from, else two facts could be left out because of each other.
      least[side] = NOT_NEEDED
      continue
    }
    const level = bounds.trail.level[entryOf(bounds, side, least[side]!)]!
    if (stamps[level] !== stamp) lesson.depth++
    stamps[level] = stamp
    addFact(lesson, side, least[side]!, level)
  }
}

/**
 * Conflict analysis to the first unique implication point (Marques-Silva and Sakallah 1999), over bounds that explain themselves lazily
 * (Ohrimenko, Stuckey and Codish 2009; for lags and resources Schutt, Feydy, Stuckey and Wallace 2013). A stronger fact of a side stands for a weaker
 * one, so a nogood holds at most one fact a side. The trail is taken off while it is read, so every reason sees the bounds that it had.
 */
export const analystOf = (reasons: Reasons): Analyst => {
  const { bounds, nogoods } = reasons
  const sides = bounds.value.length
  const lesson: Lesson = {
    facts: new Int32Array(2 * sides),
    count: 0,
    level: 0,
    depth: 0,
    met: new Int32Array(sides),
    metCount: 0,
  }
  const { draft, needs, clear } = draftOf(bounds, lesson)
  const { least } = needs
  const stamps = new Int32Array(sides + 2)
  let clashes = 0

  const begin = (overfull: number): void => {
    if (overfull >= 0) return explainOverfull(reasons, needs, overfull)
    const { side, least: wanted, kind, at } = bounds.clash
    needs.need(side ^ 1, 1 - wanted)
    explain(reasons, needs, side, wanted, kind, at)
  }

  /** A clash that none of the present level's facts took part in belongs to the deepest level that did. */
  const sinkToLevel = (): void => {
    const level = deepestLevel(bounds, needs, lesson)
    while (bounds.size > (bounds.levelStart[level + 1] ?? 0)) pop(bounds)
    bounds.level = level
    draft.present = 0
    for (let at = 0; at < lesson.metCount; at++) {
      const side = lesson.met[at]!
      if (least[side]! > boundAtLevelStart(bounds, side)) draft.present++
    }
  }

  /** Replaces facts of the present level by their reasons until one is left; its side. */
  const resolve = (): number => {
    for (;;) {
      const { trail } = bounds
      const entry = bounds.size - 1
      const side = trail.side[entry]!
      const wanted = least[side]!
      if (wanted <= trail.before[entry]!) {
        pop(bounds)
        continue
      }
      if (draft.present === 1) return side
      const kind = trail.kind[entry]!
      const at = trail.at[entry]!
      if (kind === REASON.nogood) nogoods.data[at + 2] = clashes
      least[side] = NOT_NEEDED
      draft.present--
      pop(bounds)
      explain(reasons, needs, side, wanted, kind, at)
    }
  }

  const analyse = (overfull: number): Lesson => {
    clear()
    clashes++
    lesson.metCount = 0
    begin(overfull)
    if (draft.present === 0 && bounds.level > 0) sinkToLevel()
    if (bounds.level === 0) lesson.level = -1
    else writeLesson(reasons, needs, lesson, resolve(), stamps, clashes)
    return lesson
  }
  return { analyse }
}
