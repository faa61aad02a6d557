import { openDB, type DBSchema } from 'idb'
import type { KeptHistory, WeatherAnswer, WeatherKind } from '@swardwright/journal'

/** What this device keeps of a course’s weather, for when there is no line. */
export type KeptWeather = { readonly [K in WeatherKind]: WeatherAnswer } & {
  readonly history: KeptHistory | null
}

/** Keeps the last answers. */
export type WeatherShelf = {
  read<N extends keyof KeptWeather>(course: string, name: N): Promise<KeptWeather[N] | null>
  keep<N extends keyof KeptWeather>(course: string, name: N, value: KeptWeather[N]): Promise<void>
}

interface Shape extends DBSchema {
  answers: { key: string; value: KeptWeather[keyof KeptWeather] }
}

/** A database of its own: unlike the journal all of it can be fetched again, so nothing is lost with it. */
const idbShelf = async (): Promise<WeatherShelf> => {
  const db = await openDB<Shape>('swardwright-weather', 1, {
    upgrade(fresh) {
      fresh.createObjectStore('answers')
    },
  })
  return {
    // Written under the same name below.
    read: async <N extends keyof KeptWeather>(course: string, name: N) =>
      ((await db.get('answers', `${name} ${course}`)) as KeptWeather[N] | undefined) ?? null,
    keep: async (course, name, value) => {
      await db.put('answers', value, `${name} ${course}`)
    },
  }
}

/** Where a browser refuses its database the answers last as long as the page, which has them already. */
const NO_SHELF: WeatherShelf = { read: async () => null, keep: async () => undefined }

/** Opens the shelf. Never rejects. */
export const weatherShelf = (): Promise<WeatherShelf> => idbShelf().catch(() => NO_SHELF)
