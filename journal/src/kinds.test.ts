import * as v from 'valibot'
import { describe, expect, it } from 'vitest'
import { KINDS, KIND_NAMES, findKind } from './kinds.ts'
import { ROLES } from './roles.ts'

describe.each(KIND_NAMES)('the kind %s', (name) => {
  const kind = findKind(KINDS, name)
  if (kind === undefined) throw new Error(`no kind ${name}`)

  it('has an example that its schema takes unchanged', () => {
    expect(v.parse(kind.body, kind.example)).toEqual(kind.example)
  })

  it('[J10] has a lift for each version before today', () => {
    expect(kind.lifts).toHaveLength(kind.version - 1)
    expect(kind.acceptedFrom).toBeGreaterThanOrEqual(1)
    expect(kind.acceptedFrom).toBeLessThanOrEqual(kind.version)
  })

  it('[J22] may be recorded by the manager and never by the committee, which reads', () => {
    expect(kind.roles).toContain('manager')
    expect(kind.roles).not.toContain('committee')
    expect(kind.roles.every((role) => ROLES.includes(role))).toBe(true)
  })

  it('refuses a field that it does not know', () => {
    expect(v.is(kind.body, { ...(kind.example as object), surprise: 1 })).toBe(false)
  })
})

describe('the table of kinds', () => {
  it('has no kind by the name of an inherited property', () => {
    expect(findKind(KINDS, 'toString')).toBeUndefined()
    expect(findKind(KINDS, 'constructor')).toBeUndefined()
  })
})
