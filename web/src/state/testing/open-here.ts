import { render } from 'preact'
import { act } from 'preact/test-utils'
import { readCourse, type Course } from '@swardwright/engine'
import { initialState } from '@swardwright/journal'
import demoCourse from '../../../../examples/demo-course.geojson?raw'
import { memoryStore } from '../../journal/memory-store.ts'
import { courseId, journal, refused } from '../journal.ts'
import { changeCourse, openDesk } from '../record.ts'

const read = readCourse(demoCourse)
if (!read.ok) throw new Error('the demo course does not read')

/** The demo course. */
export const demo = read.value.course

/** Opens a course on a device without a server, for a page of the test to be shown in `#app`. */
export const openHere = async (course: Course): Promise<void> => {
  // What was shown before goes first: no page stands without a course.
  await act(() => render(null, document.getElementById('app') ?? document.body))
  document.body.innerHTML = '<div id="app"></div>'
  journal.value = initialState
  refused.value = []
  courseId.value = course.id
  openDesk({ store: memoryStore(), device: 'phone', kept: () => undefined }, null)
  await changeCourse({ part: 'course', do: 'put', value: course })
}
