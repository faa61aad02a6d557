import { describe, expect, it } from 'vitest'
import { randomCourse, type Plan } from '@swardwright/engine'
import { boundSentence } from './bound-words.ts'

const { course } = randomCourse({ seed: 3, greens: 3 })
const machine = course.machines[0]
const plan = (bound: Plan['bound']): Plan => ({ bound }) as Plan

const finish = '2026-08-12T09:50:00+01:00'

describe('how good a plan is, in a sentence', () => {
  it('says what no plan can better, why, and what could be saved at most', () => {
    const by = { part: 'sand', kind: 'damp' } as const
    expect(boundSentence(plan({ finish, gapPercent: 12.345, by }), course)).toBe(
      "No plan of these greens ends before Wed 12 Aug at 09:50 (the last damp sand comes late); of this plan's working time at most 12.3 % could be saved",
    )
  })

  it('names the machine that has all the work', () => {
    const by = {
      part: 'bottleneck',
      resource: { kind: 'machines', machines: [machine?.id ?? ''] },
      workMin: 135,
    } as const
    expect(
      boundSentence(
        plan({
          finish,
          gapPercent: 0,
          by: { ...by, resource: { ...by.resource, machines: [...by.resource.machines] } },
        }),
        course,
      ),
    ).toBe(
      `No plan of these greens ends before Wed 12 Aug at 09:50 (${machine?.name} has 2 h 15 min of work that nobody else can do); this one is as good as any`,
    )
  })

  it('is silent where a plan has no bound', () => {
    expect(boundSentence(plan(undefined), course)).toBe(null)
  })
})
