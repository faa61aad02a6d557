import type { Rule } from '../../rules.ts'
import { spanOf, type TaskFact } from '../facts.ts'
import type { Finding, RuleCheck } from '../finding.ts'
import { sharedMin, SLACK_MIN } from '../spans.ts'

/** Tasks of one list, in order of time, that share minutes with the one before them that lasts longest. */
const clashes = (rule: Rule, tasks: readonly TaskFact[]): readonly Finding[] => {
  const found: Finding[] = []
  let longest: TaskFact | null = null
  for (const task of tasks) {
    const by = longest === null ? 0 : sharedMin(spanOf(longest), spanOf(task))
    if (longest !== null && by > SLACK_MIN) {
      found.push({
        rule,
        green: task.greenName,
        atMin: task.startMin,
        by,
        tasks: [longest.id, task.id],
      })
    }
    if (longest === null || task.finishMin > longest.finishMin) longest = task
  }
  return found
}

/** Rule 2, `machineTwice`: a machine does one task at a time. Counts the minutes shared. */
export const machineTwice: RuleCheck = ({ byMachine }) =>
  byMachine.flatMap((tasks) => clashes('machineTwice', tasks))

/** Rule 3, `personTwice`: a person does one task at a time. Counts the minutes shared. */
export const personTwice: RuleCheck = ({ byPerson }) =>
  byPerson.flatMap((tasks) => clashes('personTwice', tasks))
