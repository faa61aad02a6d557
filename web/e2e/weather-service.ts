import { once } from 'node:events'
import { createServer, type Server } from 'node:http'

/** A weather service on this machine for browser tests; `mood` says what it does with the next request. */
export type WeatherService = {
  readonly address: string
  readonly asked: readonly string[]
  mood: 'well' | 'fails' | 'page'
  readonly close: () => Promise<void>
}

const HOURS = 14 * 24

const series = (of: (hour: number) => number): readonly number[] =>
  Array.from({ length: HOURS }, (_, h) => Math.round(of(h) * 100) / 100)

/** Warm days and clear nights from midnight UTC of a day on; rain on the third day from 12:00, and so many hours later in each further member. */
const hourly = (firstDay: string, members: number) => {
  const startMs = Date.parse(`${firstDay}T00:00Z`)
  const rain = (late: number) => series((h) => (h >= 60 + late && h < 66 + late ? 1.6 : 0))
  const sun = (h: number) => Math.max(0, -Math.cos((h * Math.PI) / 12))
  return {
    latitude: 53.7,
    longitude: -4.9,
    elevation: 30,
    utc_offset_seconds: 0,
    timezone: 'GMT',
    hourly_units: {
      precipitation: 'mm',
      temperature_2m: '°C',
      dew_point_2m: '°C',
      wind_speed_10m: 'm/s',
      wind_gusts_10m: 'm/s',
      shortwave_radiation: 'W/m²',
    },
    hourly: {
      time: Array.from({ length: HOURS }, (_, h) =>
        new Date(startMs + h * 3_600_000).toISOString().slice(0, 16),
      ),
      precipitation: rain(0),
      ...Object.fromEntries(
        Array.from({ length: members }, (_, m) => [
          `precipitation_member${String(m + 1).padStart(2, '0')}`,
          rain(m + 1),
        ]),
      ),
      temperature_2m: series((h) => 15 - 5 * Math.cos(((h - 3) * Math.PI) / 12)),
      dew_point_2m: series(() => 10.5),
      wind_speed_10m: series((h) => 2 + 5 * sun(h) * (h > 96 ? 1.3 : 0.5)),
      wind_gusts_10m: series((h) => 3 + 9 * sun(h) * (h > 96 ? 1.3 : 0.5)),
      shortwave_radiation: series((h) => 650 * sun(h)),
    },
  }
}

const listening = async (server: Server): Promise<number> => {
  server.listen(0, '127.0.0.1')
  await once(server, 'listening')
  const address = server.address()
  if (address === null || typeof address === 'string') throw new Error('the weather service has no port')
  return address.port
}

/** Starts a weather service whose hours begin with a day. */
export const startWeatherService = async (firstDay: string): Promise<WeatherService> => {
  const asked: string[] = []
  const server = createServer((request, response) => {
    const url = request.url ?? ''
    asked.push(url)
    if (service.mood === 'fails') return response.writeHead(503).end('down')
    if (service.mood === 'page') return response.writeHead(200).end('<html>Guest Wi-Fi</html>')
    const members = url.includes('/ensemble') ? 9 : 0
    return response
      .writeHead(200, { 'content-type': 'application/json' })
      .end(JSON.stringify(hourly(firstDay, members)))
  })
  const port = await listening(server)
  const service: WeatherService = {
    address: `http://127.0.0.1:${port}`,
    asked,
    mood: 'well',
    close: async () => {
      server.closeAllConnections()
      server.close()
      await once(server, 'close')
    },
  }
  return service
}
