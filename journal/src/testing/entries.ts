import type { Course } from '@swardwright/engine'
import type { Entry } from '../entry.ts'
import type { BodyOf, KindName } from '../kinds.ts'
import { uuidV7 } from '../uuid.ts'

/** 10 August 2026, 06:00 UTC. */
export const MORNING_MS = Date.UTC(2026, 7, 10, 6)

/** The id with this number, made at the moment given. */
export const idOf = (number: number, atMs: number = MORNING_MS): string => {
  const random = new Uint8Array(10)
  new DataView(random.buffer).setUint32(6, number)
  return uuidV7({ nowMs: atMs, random })
}

type Given = {
  readonly number: number
  readonly minute?: number
  readonly author?: string
  readonly course?: string
}

/** An entry of a known kind: `number` makes its id, `minute` its moment after six in the morning. */
export const entryOf = <K extends KindName>(kind: K, body: BodyOf<K>, given: Given): Entry => {
  const atMs = MORNING_MS + (given.minute ?? given.number) * 60_000
  const at = new Date(atMs).toISOString()
  return {
    id: idOf(given.number, atMs),
    course: given.course ?? 'demo',
    device: 'phone',
    author: given.author ?? 'manager',
    at,
    recordedAt: at,
    kind,
    version: 1,
    body,
  }
}

/** A small invented course of two greens. */
export const smallCourse: Course = {
  version: 1,
  id: 'small',
  name: 'Two Greens',
  timeZone: 'Europe/London',
  altitudeM: 20,
  now: null,
  greens: ['g1', 'g2'].map((id, index) => ({
    id,
    name: `Green ${index + 1}`,
    hole: index + 1,
    areaM2: 400,
    at: [-3, 56] as [number, number],
    rootzone: { kind: 'sand' as const, goodDepthMm: 250 },
    drainage: 'well' as const,
    shade: 'open' as const,
    weak: false,
    organicTests: [],
    services: [],
    servicesChecked: true,
  })),
  places: [],
  machines: [],
  people: [],
  stores: [],
  fixtures: [],
  settings: {
    rainStopMmPerH: 0.2,
    darkFrom: null,
    mayStandDryNight: false,
    openGreensCap: 2,
    firstGreenCheckMin: 20,
    packUpMin: 20,
    detourFactor: 1.3,
    personTravelMPerS: 3,
    deepFromMm: 100,
    weather: {},
  },
  units: { tine: 'mm', depth: 'mm', sand: 't', area: 'm2', distance: 'm', temperature: 'C', rain: 'mm' },
}
