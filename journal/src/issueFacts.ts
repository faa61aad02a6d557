import * as v from 'valibot'

/** Where a value is wrong and what it should be. */
export type IssueFacts = { readonly field: string; readonly expected: string }

/**
 * What a value should be. A field that is missing should be present, one that no schema knows should be absent; our own schemas say what
 * they expect in their message; the library's own messages begin with 'Invalid' and say less than `expected`.
 */
const expectedOf = (issue: v.BaseIssue<unknown>): string => {
  if (!issue.message.startsWith('Invalid')) return issue.message
  if (issue.expected === 'never') return 'absent'
  const key = issue.path?.at(-1)?.key
  return issue.input === undefined && issue.expected === JSON.stringify(key)
    ? 'present'
    : (issue.expected ?? issue.message)
}

/** The facts of the first thing wrong; `whole` names the value itself, where no field of it is to blame. */
export const issueFacts = (issue: v.BaseIssue<unknown>, whole: string): IssueFacts => ({
  field: v.getDotPath(issue) ?? whole,
  expected: expectedOf(issue),
})
