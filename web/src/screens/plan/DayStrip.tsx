import { HOUR_MS, instantOf } from '@swardwright/engine'
import { darkSpans, hourStrip, skyHours } from '@swardwright/present'
import { DrawingView } from '../../parts/DrawingView.tsx'
import { isWide } from '../../shell/wide.ts'
import { nowMs } from '../../state/clock.ts'
import { units, useCourse } from '../../state/course.ts'
import { weather } from '../../state/weather.ts'

const FIRST_HOUR = 5
const LAST_HOUR = 22

/** The sky of one day by the hour: rain, dew, frost, dark. */
export const DayStrip = ({ date }: { readonly date: string }) => {
  const course = useCourse()
  const span = {
    fromMs: instantOf(date, FIRST_HOUR * 60, course.timeZone),
    toMs: instantOf(date, LAST_HOUR * 60, course.timeZone),
  }
  const isNow = nowMs.value >= span.fromMs && nowMs.value < span.toMs
  return (
    <DrawingView
      drawing={hourStrip({
        hours: skyHours(course, weather.value, { fromMs: span.fromMs, toMs: span.toMs - HOUR_MS / 2 }),
        dark: darkSpans(course, span),
        workable: [],
        timeZone: course.timeZone,
        units: units.value,
        widthPx: isWide.value ? 520 : 358,
        scope: `strip-${date}`,
        ...(isNow ? { nowMs: nowMs.value } : {}),
      })}
    />
  )
}
