import * as v from 'valibot'

/** Where a value is wrong and what it should be. */
export type IssueFacts = { readonly field: string; readonly expected: string }

/** Our own schemas say what they expect in their message; the library's own messages begin with 'Invalid' and hold less than `expected`. */
const expectedOf = (issue: v.BaseIssue<unknown>): string =>
  issue.message.startsWith('Invalid') ? (issue.expected ?? issue.message) : issue.message

/** The facts of the first thing wrong; `whole` names the value itself, where no field of it is to blame. */
export const issueFacts = (issue: v.BaseIssue<unknown>, whole: string): IssueFacts => ({
  field: v.getDotPath(issue) ?? whole,
  expected: expectedOf(issue),
})
