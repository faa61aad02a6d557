import * as v from 'valibot'

/** Where a value is wrong and what it should be. */
export type IssueFacts = { readonly field: string; readonly expected: string }

/** What the library calls the types of values, as people write them. */
const TYPE_WORDS: Readonly<Record<string, string>> = {
  Array: 'a list',
  Object: 'an object',
  boolean: 'true or false',
  number: 'a number',
  string: 'a text',
}

/** What a length or a size should be: `at most 120 characters`. */
const boundWords = ({ type, requirement, input }: v.BaseIssue<unknown>): string | null => {
  const plural = requirement === 1 ? '' : 's'
  const ofWhat = type.endsWith('_length')
    ? ` ${typeof input === 'string' ? 'character' : 'item'}${plural}`
    : ''
  if (type.startsWith('min_')) return `at least ${String(requirement)}${ofWhat}`
  if (type.startsWith('max_')) return `at most ${String(requirement)}${ofWhat}`
  return type === 'integer' ? 'a whole number' : null
}

/** Words of a closed list as the library writes them, `("a" | "b")`, as people do. */
const choiceWords = (expected: string): string => expected.replaceAll(' | ', ' or ').replaceAll(/[()]/gu, '')

/**
 * What a value should be. A field that is missing should be present, one that no schema knows should be absent; our own schemas say what
 * they expect in their message; the library's own messages begin with 'Invalid' and say less than its facts.
 */
const expectedOf = (issue: v.BaseIssue<unknown>): string => {
  if (!issue.message.startsWith('Invalid')) return issue.message
  if (issue.expected === 'never') return 'absent'
  const key = issue.path?.at(-1)?.key
  if (issue.input === undefined && issue.expected === JSON.stringify(key)) return 'present'
  const expected = issue.expected ?? issue.message
  return boundWords(issue) ?? TYPE_WORDS[expected] ?? choiceWords(expected)
}

/** The facts of the first thing wrong; `whole` names the value itself, where no field of it is to blame. */
export const issueFacts = (issue: v.BaseIssue<unknown>, whole: string): IssueFacts => ({
  field: v.getDotPath(issue) ?? whole,
  expected: expectedOf(issue),
})
