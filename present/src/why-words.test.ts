import { describe, expect, it } from 'vitest'
import { HOLDS, type WhyTask } from '@swardwright/engine'
import { course, plan } from './fixtures/two-greens.ts'
import { planNames } from './plan-words.ts'
import { whySentences } from './why-words.ts'

const names = planNames(course, plan)
const [first, second] = plan.tasks
if (first === undefined || second === undefined) throw new Error('the plan has tasks')

const why = (hold: WhyTask['reasons'][number]['hold'], more: Partial<WhyTask> = {}): WhyTask => ({
  task: second.id,
  spareMin: 0,
  reasons: [{ hold, earliest: second.start, task: first.id }],
  ...more,
})

describe('why a task is where it is, in words', () => {
  it.each(HOLDS)('says %s in one sentence without codes', (hold) => {
    const [sentence = ''] = whySentences(why(hold), names)
    expect(sentence).toMatch(/^[A-Z].* no earlier because of .+\.$/u)
    expect(sentence).not.toMatch(/undefined|[a-z][A-Z]/u)
  })

  it('says how much room the plan leaves', () => {
    const told = why('nothing', {
      spareMin: 25,
      reasons: [
        { hold: 'nothing', earliest: second.start, task: null },
        { hold: 'shift', earliest: '2026-08-10T06:00:00+01:00', task: null },
      ],
    })
    expect(whySentences(told, names)).toEqual([
      expect.stringMatching(/25 min later than it must: the plan leaves it this room\.$/u),
      'It could not start before the start of work: people are here at 06:00.',
    ])
  })

  it('says nothing of a task that the plan does not have', () => {
    expect(whySentences(why('shift', { task: 'none' }), names)).toEqual([])
  })
})
