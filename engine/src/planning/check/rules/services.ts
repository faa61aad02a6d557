import { greenId } from '../facts.ts'
import type { RuleCheck } from '../finding.ts'
import { isOperation } from '../steps.ts'

/** Rule 19, `servicesNotLocated`: a green left out because a service under it is not located is not worked after all. Counts 1, at its first tining. */
export const servicesNotLocated: RuleCheck = (facts) =>
  [...facts.compiled.servicesMissing].flatMap((green) => {
    const tasks = facts.tasks.filter((task) => task.green === green && isOperation(task))
    const tined = tasks.find(({ kind }) => kind === 'core' || kind === 'solidTine') ?? tasks[0]
    if (tined === undefined) return []
    return [
      {
        rule: 'servicesNotLocated',
        green: greenId(facts, green),
        atMin: tined.timed ? tined.startMin : null,
        by: 1,
        tasks: [tined.id],
      },
    ]
  })
