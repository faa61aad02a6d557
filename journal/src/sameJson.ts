import { isRecord } from '@swardwright/engine'

/** Whether two JSON values are the same, whatever the order of their keys. */
export const sameJson = (a: unknown, b: unknown): boolean => {
  if (Array.isArray(a) && Array.isArray(b))
    return a.length === b.length && a.every((value, index) => sameJson(value, b[index]))
  if (!isRecord(a) || !isRecord(b)) return a === b
  const keys = Object.keys(a)
  return (
    keys.length === Object.keys(b).length &&
    keys.every((key) => Object.hasOwn(b, key) && sameJson(a[key], b[key]))
  )
}
