// @vitest-environment happy-dom
import { render, type ComponentType } from 'preact'
import { LocationProvider, Route, Router } from 'preact-iso'
import { act } from 'preact/test-utils'
import { afterEach, beforeAll, describe, expect, it, vi } from 'vitest'
import { courseHash, makePlan, readCourse, readForecastText, readPrescription } from '@swardwright/engine'
import {
  fold,
  initialState,
  KINDS,
  momentFromMs,
  uuidV7,
  type BodyOf,
  type Entry,
  type KindName,
} from '@swardwright/journal'

// What takes long is reckoned elsewhere; here the pages show what stands in the diary.
vi.mock('../state/compute.ts', () => ({
  compute: () => new Promise(() => undefined),
  computeLong: () => new Promise(() => undefined),
  computeChances: () => new Promise(() => undefined),
}))

import demoCourse from '../../../examples/demo-course.geojson?raw'
import demoForecast from '../../../examples/demo-forecast.json?raw'
import demoPrescription from '../../../examples/demo-prescription.json?raw'

const NOW = Date.UTC(2026, 7, 9, 18)

const entryOf = <K extends KindName>(kind: K, body: BodyOf<K>, index: number): Entry => ({
  id: uuidV7({ nowMs: NOW + index, random: new Uint8Array(10).fill(index) }),
  course: 'demo',
  device: 'd',
  author: 'Ada',
  at: momentFromMs(NOW + index),
  recordedAt: momentFromMs(NOW + index),
  kind,
  version: KINDS[kind].version,
  body: { ...body },
})

const made = new Map<string, readonly Entry[]>()

/** The diary of the demo with a settled plan and an open problem, its clock held at a moment. Planned once for each. */
const entriesAt = (now: string): readonly Entry[] => {
  const known = made.get(now)
  if (known !== undefined) return known
  const [read, forecast, prescription] = [
    readCourse(demoCourse),
    readForecastText(demoForecast),
    readPrescription(demoPrescription),
  ]
  if (!read.ok || !forecast.ok || !prescription.ok) throw new Error('the demo can’t be read')
  const course = { ...read.value.course, now }
  const plan = makePlan({
    course,
    prescription: prescription.value,
    weather: forecast.value.weather,
    start: '2026-08-10',
    courseHash: courseHash(course),
    schedules: 5,
  })
  if (!plan.ok) throw new Error('no plan')
  const entries = [
    entryOf('courseChanged', { changes: [{ part: 'course', do: 'put', value: course }] }, 1),
    entryOf('forecastReceived', { source: 'file', forecast: JSON.parse(demoForecast) }, 2),
    entryOf('prescriptionSettled', { prescription: prescription.value }, 3),
    entryOf('planSettled', { plan: plan.value }, 4),
    entryOf('problemReported', { problem: 'other', words: 'Belt gone' }, 5),
  ]
  made.set(now, entries)
  return entries
}

/** Opens the demo as a device of that role has it. */
const openAs = async (role: 'committee' | 'manager', now = '2026-08-09T19:00:00+01:00'): Promise<void> => {
  const { journal, opening, courseId } = await import('../state/journal.ts')
  const { who } = await import('../state/access.ts')
  journal.value = fold(initialState, entriesAt(now))
  courseId.value = 'demo'
  opening.value = 'open'
  who.value = { role, name: 'Cora', by: 'device', needsSetUp: false }
}

const shown = async (
  path: string,
  load: () => Promise<ComponentType>,
  route = path,
): Promise<HTMLElement> => {
  history.replaceState(null, '', path)
  const root = document.createElement('div')
  document.body.replaceChildren(root)
  const Screen = await load()
  await act(() =>
    render(
      <LocationProvider>
        <Router>
          <Route path={route} component={Screen} />
          <Route default component={Screen} />
        </Router>
      </LocationProvider>,
      root,
    ),
  )
  // What stands behind rows, and behind rows behind rows; and what is drawn in its turn, which paper does not wait for.
  for (let depth = 0; depth < 3; depth += 1)
    await act(() => {
      dispatchEvent(new Event('beforeprint'))
      for (const fold of root.querySelectorAll('details:not([open])')) {
        fold.setAttribute('open', '')
        fold.dispatchEvent(new Event('toggle'))
      }
    })
  return root
}

type Control = HTMLButtonElement | HTMLInputElement

/** What can be pressed or typed in: no look behind a number, nothing that is off, nothing that only shows its text. */
const offers = (root: HTMLElement): readonly string[] =>
  [...root.querySelectorAll<Control>('button, input, select, textarea')]
    .filter((one) => !one.disabled && one.closest('fieldset.reads') === null)
    .filter((one) => !one.classList.contains('figure-from') && !one.hasAttribute('readonly'))
    .map((one) => {
      const label = one.getAttribute('aria-label') ?? ('labels' in one ? one.labels?.[0]?.textContent : null)
      return (label ?? one.textContent ?? '').trim()
    })

type Screen = {
  readonly path: string
  readonly load: () => Promise<ComponentType>
  readonly route?: string
}

/** Every page that stands at an address of its own. */
const SCREENS: readonly Screen[] = [
  { path: '/', load: async () => (await import('./now/NowPage.tsx')).NowPage },
  { path: '/crew', load: async () => (await import('./crew/CrewPage.tsx')).CrewPage },
  { path: '/course', load: async () => (await import('./course/CoursePage.tsx')).CoursePage },
  {
    path: '/green/g01',
    load: async () => (await import('./green/GreenPage.tsx')).GreenPage,
    route: '/green/:id',
  },
  {
    path: '/green/g01/outline',
    load: async () => (await import('./outline/OutlinePage.tsx')).OutlinePage,
    route: '/green/:id/outline',
  },
  {
    path: '/green/g01/runs',
    load: async () => (await import('./runs/RunsPage.tsx')).RunsPage,
    route: '/green/:id/runs',
  },
  {
    path: '/prescription',
    load: async () => (await import('./prescription/PrescriptionPage.tsx')).PrescriptionPage,
  },
  { path: '/plan', load: async () => (await import('./plan/PlanPage.tsx')).PlanPage },
  { path: '/sheets', load: async () => (await import('./sheets/SheetsPage.tsx')).SheetsPage },
  { path: '/weather', load: async () => (await import('./weather/WeatherPage.tsx')).WeatherPage },
  { path: '/weather/history', load: async () => (await import('./weather/HistoryPage.tsx')).HistoryPage },
  { path: '/stores', load: async () => (await import('./stores/StoresPage.tsx')).StoresPage },
  { path: '/fixtures', load: async () => (await import('./fixtures/FixturesPage.tsx')).FixturesPage },
  { path: '/people', load: async () => (await import('./people/PeoplePage.tsx')).PeoplePage },
  { path: '/machines', load: async () => (await import('./machines/MachinesPage.tsx')).MachinesPage },
  { path: '/members', load: async () => (await import('./members/MembersPage.tsx')).MembersPage },
  { path: '/account', load: async () => (await import('./account/AccountPage.tsx')).AccountPage },
  { path: '/courses', load: async () => (await import('./courses/CoursesPage.tsx')).CoursesPage },
  { path: '/paper', load: async () => (await import('./paper/PaperPage.tsx')).PaperPage },
  { path: '/settings', load: async () => (await import('./settings/SettingsPage.tsx')).SettingsPage },
  { path: '/more', load: async () => (await import('./more/MorePage.tsx')).MorePage },
]

/** What a reader may press on each page: it only shows something, or concerns this device alone. */
const LOOKS: Readonly<Record<string, readonly string[]>> = {
  '/course': ['Take the course out as a file'],
  '/plan': ['Chance of a caught green that you accept on any one day'],
  '/sheets': ['Day', 'For whom', 'Print'],
  '/weather/history': ['Dry days in a row', 'Dry means under'],
  '/account': ['Take this device out'],
  '/settings': ['As the device', 'Day', 'Night', 'Ask the browser to keep it'],
}

beforeAll(() => {
  vi.stubGlobal('fetch', () => Promise.reject(new Error('no line')))
  vi.stubGlobal('isSecureContext', true)
})
afterEach(() => document.body.replaceChildren())

describe('somebody who only reads', () => {
  it.each(SCREENS)('is told so at $path, and offered no change', async ({ path, load, route }) => {
    await openAs('committee')
    const root = await shown(path, load, route)
    expect(root.textContent).toContain('You can read everything here')
    expect([...new Set(offers(root))]).toEqual(LOOKS[path] ?? [])
  })

  it('is offered no change on the working day either', async () => {
    await openAs('committee', '2026-08-10T09:30:00+01:00')
    const root = await shown('/', async () => (await import('./now/NowPage.tsx')).NowPage)
    expect(root.textContent).toContain('Belt gone')
    expect([...new Set(offers(root))]).toEqual(['Bail-out'])
  })

  it('is another matter for the manager, who finds something to change on nearly all of them', async () => {
    await openAs('manager')
    const counts = []
    for (const { path, load, route } of SCREENS) counts.push(offers(await shown(path, load, route)).length)
    expect(counts.filter((count) => count > 3).length).toBeGreaterThan(12)
  })
})
