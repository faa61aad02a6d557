import { writeCourse } from '@swardwright/engine'
import { counted, quantityWords } from '@swardwright/present'
import { Fold } from '../../parts/Fold.tsx'
import { Page, Part } from '../../parts/Page.tsx'
import { saveFile } from '../../parts/save-file.ts'
import { units, useCourse } from '../../state/course.ts'
import { OutlinesFromMap } from '../outline/OutlinesFromMap.tsx'
import { CourseMap } from './CourseMap.tsx'
import { GreenList } from './GreenList.tsx'
import { ImportCourse } from './ImportCourse.tsx'
import { WORDS } from './words.ts'
import { decides } from '../../state/access.ts'

/** The course: greens to scale on a map, and as a list; in and out as files. */
export const CoursePage = () => {
  const course = useCourse()
  const areaM2 = course.greens.reduce((sum, green) => sum + green.areaM2, 0)
  return (
    <Page
      title={WORDS.title}
      over={`${course.name}: ${counted(course.greens.length, 'green', 'greens')}, ${quantityWords('area', areaM2, units.value)}`}
    >
      <div class="columns main-left">
        <div class="stack beside">
          <Part title={WORDS.map}>
            <CourseMap course={course} />
            <p class="small quiet">{WORDS.mapHint}</p>
          </Part>
          <div>
            <Fold summary={WORDS.inOut}>
              {() => (
                <>
                  <button
                    type="button"
                    class="thin"
                    onClick={() =>
                      saveFile(`${course.id}.geojson`, 'application/geo+json', writeCourse(course))
                    }
                  >
                    {WORDS.export}
                  </button>
                  {decides.value ? (
                    <>
                      <OutlinesFromMap />
                      <ImportCourse />
                    </>
                  ) : null}
                </>
              )}
            </Fold>
          </div>
        </div>
        <Part title={WORDS.list}>
          <GreenList />
        </Part>
      </div>
    </Page>
  )
}
