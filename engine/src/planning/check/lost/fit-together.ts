import type { LeftStep, LostGround } from './left-of-green.ts'
import { clashOnMachine, openMachine } from './machine-clash.ts'
import { clashOfPeople } from './people-clash.ts'
import { allOpen, copyOf, push, type Open } from './push.ts'
import { rowOf } from './row.ts'

/** Choices that may still be looked at for one question. */
export type Budget = { nodes: number }

/** Most people, and most machines for a step, that are told apart: bits of a number. Where there are more the question is left open. */
const MOST_BITS = 30

/**
 * Whether the steps of several greens could be done side by side, each inside its window: one at a time on each machine with the ways between, and never more at once than there are people for, those who set a machine
 * up among them. Left out, which only makes it easier: who is on the ways, how people get from one piece of work to the next, and breaks.
 *
 * Branch and bound. All is put at its soonest. Where two clash on a machine, one of them goes first (immediate selection after Carlier and Pinson 1989, from memory); where several need more people than there are, one of
 * them waits (minimal forbidden sets after Igelmund and Radermacher 1983, from memory). True where nothing clashes any more, and where the question stays open.
 */
export const fitTogether = (ground: LostGround, steps: readonly LeftStep[], budget: Budget): boolean => {
  const isTooWide =
    ground.facts.problem.people.length > MOST_BITS || steps.some(({ options }) => options.length > MOST_BITS)
  if (isTooWide) return true
  const row = rowOf(ground, steps)
  const search = (open: Open): boolean => {
    if (budget.nodes <= 0) return true
    budget.nodes--
    if (!push(row, open)) return false
    const choices = clashOnMachine(row, open) ?? openMachine(row, open) ?? clashOfPeople(row, open)
    if (choices === null) return true
    return choices.some((choose) => {
      const next = copyOf(open)
      choose(next)
      return search(next)
    })
  }
  return search(allOpen(row))
}
