import { describe, expect, it } from 'vitest'
import { courseHash, makePlan, readCourse, readForecastText, readPrescription } from '@swardwright/engine'
import demoCourse from '../../../examples/demo-course.geojson?raw'
import demoForecast from '../../../examples/demo-forecast.json?raw'
import demoPrescription from '../../../examples/demo-prescription.json?raw'
import { dayNow, type DayAsk } from './day-now.ts'

const opened = <T>(
  read: { readonly ok: true; readonly value: T } | { readonly ok: false; readonly error: unknown },
): T => {
  if (read.ok) return read.value
  throw new Error(JSON.stringify(read.error))
}

const { course } = opened(readCourse(demoCourse))
const { weather } = opened(readForecastText(demoForecast))
const prescription = opened(readPrescription(demoPrescription))
const plan = opened(
  makePlan({
    course,
    courseHash: courseHash(course),
    prescription,
    weather,
    start: '2026-08-10',
    schedules: 20,
  }),
)

const at = (clock: string): string => `2026-08-10T${clock}:00+01:00`
const ask = (more: Partial<DayAsk>): DayAsk => ({
  plan,
  course,
  weather,
  facts: [],
  now: at('07:00'),
  hasNewForecast: false,
  ...more,
})

/** Greens opened on the first day, in order, by the plan itself. */
const firstDay = plan.openings
  .filter((one) => one.opened.startsWith('2026-08-10'))
  .toSorted((a, b) => Date.parse(a.opened) - Date.parse(b.opened))

describe('the day at one minute', () => {
  it('names the green that is opened next, with a last safe start not before its planned opening', () => {
    expect(firstDay.length).toBeGreaterThan(2)
    for (const clock of ['05:00', '07:00', '08:00']) {
      const next = firstDay.find((one) => Date.parse(one.opened) >= Date.parse(at(clock)))
      const told = opened(dayNow(ask({ now: at(clock) }))).next
      expect(told === null ? null : [told.green, told.opened]).toEqual(
        next === undefined ? null : [next.green, next.opened],
      )
      if (next !== undefined)
        expect(Date.parse(told?.until ?? '')).toBeGreaterThanOrEqual(Date.parse(next.opened))
    }
  })

  it('names none once the last green of the day is opened, though more are opened tomorrow', () => {
    expect(plan.openings.length).toBeGreaterThan(firstDay.length)
    expect(opened(dayNow(ask({ now: at('23:00') }))).next).toBeNull()
  })

  it('makes the plan again from the facts: what is said to be finished stays, and the rest keeps out of the outage', () => {
    const { again } = opened(
      dayNow(
        ask({ facts: [{ kind: 'machineOut', machine: 'corer', from: at('07:00'), until: at('12:00') }] }),
      ),
    )
    const cored = again.plan.tasks.filter(
      ({ machine, start, finish }) => machine === 'corer' && start < at('12:00') && finish > at('07:00'),
    )
    expect(cored).toEqual([])
    expect(again.changes.length).toBeGreaterThan(0)
  })

  it.each([
    ['06:22', '06:40'],
    // Begun and broken off within one minute.
    ['06:50', '06:50'],
  ])('goes on later with a step begun at %s and broken off at %s', (begun, broken) => {
    const green = firstDay[0]?.green ?? ''
    const step = { green, operation: 'core', pass: 1 } as const
    const facts: DayAsk['facts'] = [
      { kind: 'started', ...step, at: at(begun) },
      { kind: 'stopped', ...step, at: at(broken) },
    ]
    const { again } = opened(dayNow(ask({ facts })))
    const cored = again.plan.tasks.filter((task) => task.green === green && task.operation === 'core')
    expect(cored.filter((task) => task.finish <= at('07:00')).map((task) => task.finish)).toEqual([
      at(broken),
    ])
    expect(cored.filter((task) => task.start >= at('07:00'))).toHaveLength(1)
  })

  it('names no green to open where rain is told from ten minutes ahead until the night, and tells the open ones as caught', () => {
    const facts: DayAsk['facts'] = [
      { kind: 'rain', from: at('07:10'), until: '2026-08-10T23:00:00+01:00', mmPerH: 4 },
    ]
    const { again, next } = opened(dayNow(ask({ facts })))
    // Opened at 06:22 and hours from its finish: nothing saves it.
    const lying = firstDay.filter((one) => Date.parse(one.opened) < Date.parse(at('07:00')))
    expect(lying.length).toBeGreaterThan(0)
    expect(again.caught.map(({ green }) => green)).toEqual(lying.map(({ green }) => green))
    expect(next).toBeNull()
  })

  it('gives back what is wrong with a fact', () => {
    const told = dayNow(ask({ facts: [{ kind: 'skipped', green: 'nowhere' }] }))
    expect(told).toMatchObject({ ok: false, error: { type: 'badFact', received: 'nowhere' } })
  })
})
