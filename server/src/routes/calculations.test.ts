import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { CATALOGUE, calculate } from '@swardwright/engine'
import { testServer, type TestServer } from '../testing/testServer.ts'

let server: TestServer
beforeAll(async () => {
  server = await testServer()
})
afterAll(() => server.close())

const run = (name: string, payload: object) =>
  server.ask({ method: 'POST', url: `/api/calculations/${name}`, payload })

describe('calculations over HTTP', () => {
  it('lists all of them with what they take and where they come from', async () => {
    const list: readonly Record<string, unknown>[] = JSON.parse(
      (await server.ask({ url: '/api/calculations' })).text,
    )
    expect(list.map((item) => item['name'])).toEqual(CATALOGUE.map((item) => item.name))
    for (const item of list)
      expect(Object.keys(item)).toEqual(
        expect.arrayContaining(['title', 'inputs', 'outputs', 'sources', 'checks']),
      )
  })

  it('gives what the engine gives, for the first published row of each', async () => {
    for (const item of CATALOGUE) {
      const [check] = item.checks
      if (check === undefined) throw new Error(`${item.name} has no row`)
      const answer = await run(item.name, check.input as object)
      const result = calculate(item.name, check.input)
      expect(answer.status).toBe(200)
      expect(answer.body).toEqual(result.ok ? JSON.parse(JSON.stringify(result.value)) : null)
    }
  })

  it('answers a wrong input with 400 and one clear sentence', async () => {
    const { status, body } = await run('tining.areaShare', { holeDiameterMm: 900 })
    expect(status).toBe(400)
    expect(body).toMatchObject({
      error: {
        type: 'outOfRange',
        field: 'holeDiameterMm',
        received: 900,
        message: 'holeDiameterMm is 900 mm; it must be 1 to 100 mm',
      },
    })
  })

  it('answers an empty request like an empty input', async () => {
    const answer = await server.ask({ method: 'POST', url: '/api/calculations/tining.areaShare' })
    expect(answer).toMatchObject({ status: 400, body: { error: { type: 'missing' } } })
  })

  it('answers an unknown name with 404', async () => {
    expect(await run('tining.magic', {})).toMatchObject({
      status: 404,
      body: { error: { type: 'unknownItem', message: 'there is no calculation called tining.magic' } },
    })
  })
})
