import { once } from 'node:events'
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http'

/** What the stub does with one request. */
export type Behaviour = (request: IncomingMessage, response: ServerResponse) => void

/** A weather service on this machine that behaves as it is told, one behaviour a request; the last goes on. */
export type WeatherStub = {
  /** Address to give as a provider's. */
  readonly address: string
  /** Paths with their queries, as they were asked. */
  readonly asked: readonly string[]
  /** What happens from the next request on. */
  readonly behave: (...behaviours: readonly Behaviour[]) => void
  readonly close: () => Promise<void>
}

/** Answers with JSON. */
export const json =
  (value: unknown, status = 200): Behaviour =>
  (_request, response) => {
    response.writeHead(status, { 'content-type': 'application/json' }).end(JSON.stringify(value))
  }

/** Answers with a text as it is. */
export const text =
  (body: string, status = 200, headers: Readonly<Record<string, string>> = {}): Behaviour =>
  (_request, response) => {
    response.writeHead(status, { 'content-type': 'text/html', ...headers }).end(body)
  }

/** Takes the request and says nothing. */
export const hang: Behaviour = () => undefined

/** Begins an answer and never ends it. */
export const hangHalfway: Behaviour = (_request, response) => {
  response.writeHead(200, { 'content-type': 'application/json' }).write('{"hourly":')
}

/** Breaks the line. */
export const breakOff: Behaviour = (request) => {
  request.socket.destroy()
}

/** Sends more and more, without saying how much it will be. */
export const endless: Behaviour = (_request, response) => {
  response.writeHead(200, { 'content-type': 'application/json' })
  const chunk = ' '.repeat(64_000)
  const send = (): void => {
    if (response.destroyed) return
    if (response.write(chunk)) setImmediate(send)
    else response.once('drain', send)
  }
  send()
}

/** Hourly JSON in the open shape, in the units that are asked for: `hours` hours from a day on, in UTC, with other columns or units put over it. */
export const hourlyJson = (
  date: string,
  hours: number,
  over: { readonly hourly?: Record<string, unknown>; readonly units?: Record<string, unknown> } = {},
) => {
  const startMs = Date.parse(`${date}T00:00Z`)
  const every = (value: number) => Array.from({ length: hours }, () => value)
  return {
    latitude: 53.7,
    longitude: -4.9,
    elevation: 30,
    utc_offset_seconds: 0,
    timezone: 'GMT',
    hourly_units: {
      time: 'iso8601',
      precipitation: 'mm',
      temperature_2m: '°C',
      dew_point_2m: '°C',
      wind_speed_10m: 'm/s',
      wind_gusts_10m: 'm/s',
      shortwave_radiation: 'W/m²',
      ...over.units,
    },
    hourly: {
      time: Array.from({ length: hours }, (_, h) =>
        new Date(startMs + h * 3_600_000).toISOString().slice(0, 16),
      ),
      precipitation: every(0.1),
      temperature_2m: every(14),
      dew_point_2m: every(9),
      wind_speed_10m: every(3),
      wind_gusts_10m: every(5),
      shortwave_radiation: every(200),
      ...over.hourly,
    },
  }
}

/** Starts a stub. */
export const weatherStub = async (): Promise<WeatherStub> => {
  const asked: string[] = []
  let queue: readonly Behaviour[] = [hang]
  const server = createServer((request, response) => {
    asked.push(request.url ?? '')
    const [now, ...later] = queue
    if (later.length > 0) queue = later
    now?.(request, response)
  })
  server.listen(0, '127.0.0.1')
  await once(server, 'listening')
  const address = server.address()
  if (address === null || typeof address === 'string') throw new Error('the stub listens on no port')
  return {
    address: `http://127.0.0.1:${address.port}`,
    asked,
    behave: (...behaviours) => {
      queue = behaviours
    },
    close: async () => {
      server.closeAllConnections()
      server.close()
      await once(server, 'close')
    },
  }
}
