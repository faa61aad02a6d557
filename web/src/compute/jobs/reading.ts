import {
  courseFromCount,
  courseFromCsv,
  courseFromMap,
  readCourse as readCourseFile,
  readMapFile,
} from '@swardwright/engine'
import type { Doing } from '../work.ts'

/** A course file says so, or calls its features by kind; any other map is read as a map. */
const isCourseFile = (text: string): boolean => /"(?:swardwright|kind)"\s*:/u.test(text)

export const readCourse: Doing<'readCourse'> = (source) => {
  if (source.kind === 'count') return courseFromCount(source)
  if (source.kind === 'list') return courseFromCsv(source.text)
  if (isCourseFile(source.text)) return readCourseFile(source.text)
  const map = readMapFile(source.text)
  return map.ok ? courseFromMap(map.value) : readCourseFile(source.text)
}

export const readMap: Doing<'readMap'> = readMapFile
