// @vitest-environment happy-dom
import { render } from 'preact'
import { act } from 'preact/test-utils'
import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import {
  courseHash,
  makePlan,
  readForecastText,
  readPrescription,
  type Plan,
  type PlanRisk,
} from '@swardwright/engine'
import demoForecast from '../../../../examples/demo-forecast.json?raw'
import demoPrescription from '../../../../examples/demo-prescription.json?raw'
import type { Work } from '../../compute/work.ts'
import { record } from '../../state/record.ts'
import { demo, openHere } from '../../state/testing/open-here.ts'

type Answer = Work['risk']['output']
type Asked = {
  readonly input: Work['risk']['input']
  readonly answer: (told: Answer) => void
  readonly fail: () => void
}

const asked = vi.hoisted((): Asked[] => [])

// The engines stand aside: what is asked about the skies is answered by the test.
vi.mock('../../state/compute.ts', () => ({
  compute: () => new Promise(() => undefined),
  computeLong: () => new Promise(() => undefined),
  computeChances: (_: string, input: Asked['input']) =>
    new Promise<Answer>((answer, refuse) => {
      asked.push({ input, answer, fail: () => refuse(new Error('no answer')) })
    }),
}))

// Fetched here, so that no test waits for it.
await import('./EveChance.tsx')
const { EveBefore } = await import('./EveBefore.tsx')
const { riskWish } = await import('../../state/risk.ts')

const DATE = '2026-08-10'

const planOf = (): Plan => {
  const [forecast, prescription] = [readForecastText(demoForecast), readPrescription(demoPrescription)]
  if (!forecast.ok || !prescription.ok) throw new Error('the demo can’t be read')
  const made = makePlan({
    course: demo,
    prescription: prescription.value,
    weather: forecast.value.weather,
    start: DATE,
    courseHash: courseHash(demo),
    schedules: 5,
  })
  if (!made.ok) throw new Error('no plan')
  return made.value
}
const plan = planOf()

const toldOf = (chance: number, date = DATE): Answer => {
  const told: PlanRisk = {
    level: 0.05,
    draws: 200,
    source: 'spread',
    uses: [],
    days: [
      {
        date,
        planned: 7,
        chance,
        standardError: 0.03,
        lastSafeStart: '2026-08-10T07:03:00+01:00',
        curve: [],
        opened: { plain: 7, safe: 2 },
        finished: { plain: 6, safe: 2 },
      },
    ],
  }
  return { ok: true, value: told }
}

/** Long enough for a picture and what comes after it. */
const PICTURE_MS = 300

const after = (ms: number): Promise<void> =>
  act(() => new Promise<void>((resolve) => setTimeout(resolve, ms)))

const show = async (): Promise<void> => {
  await act(() => render(<EveBefore date={DATE} />, document.getElementById('app') ?? document.body))
  // The part's code comes after the page, and it asks after a picture.
  await after(0)
  await after(PICTURE_MS)
}

const told = (): Element | undefined =>
  [...document.querySelectorAll('.reasons > li')].find((one) => one.textContent.includes('caught green'))

const forecastIn = (): Promise<unknown> =>
  record('forecastReceived', { source: 'file', forecast: JSON.parse(demoForecast) })

beforeEach(async () => {
  asked.length = 0
  await openHere({ ...demo, now: '2026-08-09T19:00:00+01:00' })
  await record('planSettled', { plan })
})
afterEach(() => {
  riskWish.value = { ...riskWish.value, level: 0.05 }
})

it('asks for the chance once the page is drawn, says so, and tells it among the reasons in ochre where it is over the level', async () => {
  await forecastIn()
  await show()
  expect(asked).toHaveLength(1)
  expect(told()?.textContent).toMatch(/^Chance of a caught green: Reckoning/u)
  asked[0]?.answer(toldOf(0.31))
  await after(0)
  expect(told()?.textContent).toBe(
    'Chance of a caught green 31 %, over the level of 5 %; with none opened after 07:03 it stays under 5 %. The chances',
  )
  expect(told()?.className).toBe('ochre')
  expect(told()?.querySelector('a')?.getAttribute('href')).toBe('/plan#chances')
  // The manager decides: the word above stands.
  expect(document.querySelector('.strike')?.textContent).toBe('GO')
})

it('tells a chance within the level in plain ink, and asks nothing again when something else is recorded or the page is turned to again', async () => {
  await forecastIn()
  await show()
  asked[0]?.answer(toldOf(0.03))
  await after(0)
  await record('noteWritten', { words: 'Wet hollow' })
  await after(PICTURE_MS)
  await act(() => render(null, document.getElementById('app') ?? document.body))
  await show()
  expect(asked).toHaveLength(1)
  expect(told()?.textContent).toBe('Chance of a caught green 3 %, within the level of 5 %. The chances')
  expect(told()?.className).toBe('')
})

it('shows no chance of another question: when the level changes it is reckoned anew', async () => {
  await forecastIn()
  await show()
  asked[0]?.answer(toldOf(0.03))
  await after(0)
  await act(() => {
    riskWish.value = { ...riskWish.value, level: 0.02 }
  })
  expect(told()?.textContent).toContain('Reckoning')
  await show()
  expect(asked.map(({ input }) => input.wish.level)).toEqual([0.05, 0.02])
})

it('says where it could not be reckoned', async () => {
  await forecastIn()
  await show()
  asked[0]?.fail()
  await after(0)
  expect(told()?.textContent).toBe('Chance of a caught green: could not be reckoned. The chances')
  // Asked again the next time.
  await act(() => render(null, document.getElementById('app') ?? document.body))
  await show()
  asked[1]?.answer(toldOf(0.31))
  await after(0)
  expect(told()?.textContent).toContain('31 %')
})

it('neither asks nor tells anything without a forecast', async () => {
  await show()
  expect([asked.length, told()]).toEqual([0, undefined])
  expect(document.querySelector('.strike')?.textContent).toBe('GO')
})

it('neither asks nor tells anything of a draft where no plan was ever settled', async () => {
  await openHere({ ...demo, now: '2026-08-09T19:00:00+01:00' })
  await forecastIn()
  const { takeDraft, draft } = await import('../../state/plan.ts')
  takeDraft(plan, [])
  await show()
  expect([asked.length, told()]).toEqual([0, undefined])
  expect(document.querySelector('.strike')?.textContent).toBe('GO')
  draft.value = null
})
