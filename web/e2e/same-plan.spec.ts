import { readFile } from 'node:fs/promises'
import { makePlan, readCourse, readForecastText, readPrescription, type Plan } from '@swardwright/engine'
import { expect, test, turnTo, untilPlanned, untilSent } from './club.ts'

const example = (name: string): Promise<string> =>
  readFile(new URL(`../../examples/${name}`, import.meta.url), 'utf8')

test('the same data, seed and count make the same plan in the browser as in Node', async ({ page, club }) => {
  await turnTo(page, club, '/plan')
  await untilPlanned(page)
  await page.getByRole('button', { name: 'Settle this plan' }).click()
  await untilSent(page)
  const pulled = await page.request.get(`${club.address()}/api/courses/ossenby/entries?limit=500`)
  const { entries } = (await pulled.json()) as { entries: readonly { kind: string; body: { plan: Plan } }[] }
  const settled = entries.findLast(({ kind }) => kind === 'planSettled')?.body.plan
  if (settled === undefined) throw new Error('a plan was settled')

  const [course, prescription, forecast] = [
    readCourse(await example('demo-course.geojson')),
    readPrescription(await example('demo-prescription.json')),
    readForecastText(await example('demo-forecast.json')),
  ]
  if (!course.ok || !prescription.ok || !forecast.ok) throw new Error('the demo reads')
  const made = makePlan({
    course: course.value.course,
    courseHash: settled.course.hash,
    prescription: prescription.value,
    weather: forecast.value.weather,
    start: settled.start,
    seed: settled.seed,
  })
  if (!made.ok) throw new Error(made.error.type)
  expect(made.value.tasks).toEqual(settled.tasks)
  expect(made.value.objective).toEqual(settled.objective)
})
