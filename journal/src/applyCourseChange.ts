import { fail, ok, type Course, type Result } from '@swardwright/engine'
import type { CourseChange } from './courseChange.ts'

/** Why a change has nothing to work on. The entry stays in the journal and is listed as set aside. */
export type ChangeError =
  | { readonly type: 'noCourse'; readonly part: CourseChange['part'] }
  | { readonly type: 'noItem'; readonly part: CourseChange['part']; readonly id: string }
  | { readonly type: 'lastGreen'; readonly part: 'greens'; readonly id: string }

type ListChange = Extract<
  CourseChange,
  { part: 'greens' | 'places' | 'machines' | 'people' | 'stores' | 'tineSets' | 'fixtures' }
>
type Item = { readonly id: string }

/** Fields that are there replace; `undefined` leaves a field as it is. */
const withFields = <T extends object>(
  value: T,
  fields: Partial<T> | object,
  clear: readonly string[] = [],
): T => {
  const given = Object.entries(fields).filter(([, field]) => field !== undefined)
  const kept = Object.entries(value).filter(([key]) => !clear.includes(key))
  return Object.fromEntries([...kept, ...given]) as T
}

/** The items after a change, or null where the item it speaks of is not there. Order of items is kept; a new one goes last. */
const changedItems = <T extends Item>(items: readonly T[], change: ListChange): readonly T[] | null => {
  const id = change.do === 'put' ? change.value.id : change.id
  const index = items.findIndex((item) => item.id === id)
  const found = items[index]
  if (change.do === 'put')
    return found === undefined
      ? [...items, change.value as unknown as T]
      : items.with(index, change.value as unknown as T)
  if (found === undefined) return null
  return change.do === 'remove'
    ? items.toSpliced(index, 1)
    : items.with(index, withFields(found, change.fields, 'clear' in change ? change.clear : []))
}

const withList = (course: Course, change: ListChange): Result<Course, ChangeError> => {
  const items = changedItems<Item>(course[change.part] ?? [], change)
  const id = change.do === 'put' ? change.value.id : change.id
  if (items === null) return fail({ type: 'noItem', part: change.part, id })
  if (change.part === 'greens' && items.length === 0) return fail({ type: 'lastGreen', part: 'greens', id })
  return ok({ ...course, [change.part]: items })
}

/**
 * The course after one change; the course given is not touched. `null` is a course not yet set up, which only a whole course changes.
 * Fails when the change speaks of an item that is not there (removed elsewhere meanwhile) or would remove the last green.
 */
export const applyCourseChange = (
  course: Course | null,
  change: CourseChange,
): Result<Course, ChangeError> => {
  if (change.part === 'course') return ok(change.value)
  if (course === null) return fail({ type: 'noCourse', part: change.part })
  switch (change.part) {
    case 'settings':
      return ok({ ...course, settings: withFields(course.settings, change.fields) })
    case 'units':
      return ok({ ...course, units: withFields(course.units, change.fields) })
    case 'facts':
      return ok(withFields(course, change.fields))
    default:
      return withList(course, change)
  }
}
