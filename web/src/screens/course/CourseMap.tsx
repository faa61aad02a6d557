import type { Course, Plan } from '@swardwright/engine'

export const CourseMap = (_: { readonly course: Course; readonly walk?: Plan; readonly date?: string }) =>
  null
