import * as v from 'valibot'
import { count, quantity } from '../catalogue/quantity.ts'
import { MACHINE_KINDS, OPERATIONS } from '../planning/operations.ts'
import { dayNumber } from '../time/calendar.ts'

/** A stable short name in files: letters, digits, dot, dash, underscore. */
export const id = v.pipe(
  v.string(),
  v.regex(/^[\p{L}\p{N}._-]{1,64}$/u, 'an id of letters, digits, dot, dash or underscore'),
)

const name = v.pipe(v.string(), v.trim(), v.minLength(1), v.maxLength(120))

/** A calendar day, 'YYYY-MM-DD'; 30 February is none. */
export const plainDate = v.pipe(
  v.string(),
  v.isoDate(),
  v.check((date) => !Number.isNaN(dayNumber(date)), 'a day of the calendar such as 2026-08-10'),
)

/** A time of day on the course's clock, 'HH:MM'. */
export const clockTime = v.pipe(
  v.string(),
  v.regex(/^([01]\d|2[0-3]):[0-5]\d$/u, 'a time of day such as 06:30'),
)

/** [longitude, latitude] in degrees, WGS84. */
export const lonLat = v.tuple([
  v.pipe(v.number(), v.minValue(-180), v.maxValue(180)),
  v.pipe(v.number(), v.minValue(-90), v.maxValue(90)),
])

/** A polygon as GeoJSON has it: outer ring, then holes; each ring closed. */
export const polygonRings = v.pipe(v.array(v.pipe(v.array(lonLat), v.minLength(4))), v.minLength(1))

/** Organic matter of one depth band, as the laboratory gave it. */
export const organicLayer = v.object({
  fromMm: quantity({ meaning: 'Top of the layer below the surface', unit: 'mm', min: 0, max: 400 }),
  toMm: quantity({ meaning: 'Bottom of the layer below the surface', unit: 'mm', min: 1, max: 400 }),
  organicPercent: quantity({ meaning: 'Organic matter by loss on ignition', unit: '%', min: 0, max: 60 }),
})

/** One laboratory result with the facts of its method; results of different method are never compared. */
export const organicTest = v.object({
  date: plainDate,
  laboratory: v.optional(name),
  burnC: v.optional(quantity({ meaning: 'Temperature of the furnace', unit: 'degC', min: 300, max: 600 })),
  verdure: v.optional(v.picklist(['in', 'out'])),
  layers: v.pipe(v.array(organicLayer), v.minLength(1)),
})

/** A pipe, cable or drain under a green. Deep work is refused while one is not located. */
export const buriedService = v.object({
  id,
  kind: v.picklist(['irrigation', 'power', 'control', 'drain', 'gas', 'water', 'other']),
  located: v.boolean(),
  flagged: v.boolean(),
  by: v.optional(name),
  date: v.optional(plainDate),
  depthMm: v.optional(quantity({ meaning: 'Cover over the service', unit: 'mm', min: 0, max: 3000 })),
  keepClearM: quantity({ meaning: 'Strip to keep clear on each side', unit: 'm', min: 0, max: 20 }),
  line: v.optional(v.array(lonLat)),
})

/** Smallest and largest accepted green, m2. */
export const GREEN_AREA_M2 = { min: 20, max: 5000 } as const

/** One putting green. */
export const green = v.object({
  id,
  name,
  hole: v.nullable(count({ meaning: 'Number of the hole; null for a practice green', min: 1, max: 36 })),
  areaM2: quantity({ meaning: 'Area of the green', unit: 'm2', ...GREEN_AREA_M2 }),
  outline: v.optional(polygonRings),
  at: lonLat,
  playDeg: v.optional(
    quantity({
      meaning: 'Compass bearing of the walk onto the green along the line of play, which is 12 o’clock',
      unit: 'deg',
      min: 0,
      max: 360,
    }),
  ),
  slope: v.optional(
    v.object({
      percent: quantity({
        meaning: 'Steepest slope of the part that machines cross',
        unit: '%',
        min: 0,
        max: 60,
      }),
      fallDeg: quantity({ meaning: 'Compass bearing downhill', unit: 'deg', min: 0, max: 360 }),
    }),
  ),
  rootzone: v.object({
    kind: v.picklist(['sand', 'soil']),
    goodDepthMm: quantity({ meaning: 'Depth of good profile', unit: 'mm', min: 0, max: 600 }),
  }),
  drainage: v.picklist(['well', 'moderate', 'poor']),
  shade: v.picklist(['open', 'part', 'dense']),
  weak: v.boolean(),
  organicTests: v.array(organicTest),
  services: v.array(buriedService),
  servicesChecked: v.boolean(),
})

/** Somewhere else that matters: where machines live, where sand lies, where cores go. */
export const place = v.object({
  id,
  name,
  kind: v.picklist([
    'shed',
    'sandBay',
    'arisingsBay',
    'tee',
    'bunker',
    'water',
    'wood',
    'track',
    'noGo',
    'boundary',
  ]),
  at: lonLat,
  line: v.optional(v.array(lonLat)),
  outline: v.optional(polygonRings),
  /** A track that is driven only in the direction drawn. */
  oneWay: v.optional(v.boolean()),
})

/** A machine of the shed. */
export const machine = v.object({
  id,
  name,
  kind: v.picklist(MACHINE_KINDS),
  widthM: quantity({ meaning: 'Working width', unit: 'm', min: 0.1, max: 15 }),
  overlapM: quantity({ meaning: 'Overlap of neighbouring runs', unit: 'm', min: 0, max: 3 }),
  speedMPerS: quantity({ meaning: 'Working speed', unit: 'm/s', min: 0.02, max: 6 }),
  strokesPerMin: v.optional(
    quantity({
      meaning: 'Strokes of the tine head; with the spacing along the run they set the speed',
      unit: '1/min',
      min: 20,
      max: 2000,
    }),
  ),
  turnS: quantity({ meaning: 'Time for one turn at the edge', unit: 's', min: 0, max: 300 }),
  perGreenMin: quantity({
    meaning: 'Time lost on each green besides runs and turns (emptying, lining up)',
    unit: 'min',
    min: 0,
    max: 60,
  }),
  travelMPerS: quantity({ meaning: 'Speed between greens', unit: 'm/s', min: 0.2, max: 15 }),
  loadedTravelMPerS: v.optional(
    quantity({
      meaning: 'Speed from the sand bay to a green with a full hopper; as empty where not told',
      unit: 'm/s',
      min: 0.2,
      max: 15,
    }),
  ),
  setUpMin: count({ meaning: 'Getting the machine ready, once a day', min: 0, max: 240 }),
  crew: count({ meaning: 'People it takes to work it', min: 1, max: 6 }),
  hopperT: v.optional(quantity({ meaning: 'Dry sand in one hopper load', unit: 't', min: 0.05, max: 10 })),
  loadMin: v.optional(count({ meaning: 'Time to fill the hopper at the bay', min: 0, max: 120 })),
  spinner: v.optional(v.boolean()),
  vibrationMPerS2: v.optional(
    quantity({
      meaning: 'Hand-arm vibration in use, as the maker or hirer states it',
      unit: 'm/s2',
      min: 0,
      max: 40,
    }),
  ),
  outOn: v.optional(v.array(plainDate)),
})

/** A break: so many minutes free somewhere inside the window. */
export const breakWindow = v.object({
  earliest: clockTime,
  latest: clockTime,
  minutes: count({ meaning: 'Length of the break', min: 5, max: 120 }),
})

/** One of the crew. Skills are the operations the person is trained for. */
export const person = v.object({
  id,
  name,
  skills: v.array(v.picklist(OPERATIONS)),
  shift: v.object({ from: clockTime, to: clockTime }),
  overtimeMin: count({ meaning: 'Overtime the person agrees to, at most, a day', min: 0, max: 300 }),
  breaks: v.array(breakWindow),
  courseSetUpUntil: v.nullable(clockTime),
  awayOn: v.optional(v.array(plainDate)),
})

/** Sand in a bay, and what is still to come. */
export const sandStore = v.object({
  id,
  place: id,
  kind: v.picklist(['damp', 'kilnDried']),
  stockT: quantity({ meaning: 'Dry mass of sand in the bay', unit: 't', min: 0, max: 2000 }),
  capacityT: quantity({ meaning: 'What the bay holds', unit: 't', min: 0, max: 2000 }),
  lorryT: quantity({ meaning: 'One lorry load', unit: 't', min: 1, max: 60 }),
  deliveries: v.array(
    v.object({
      date: plainDate,
      time: clockTime,
      massT: quantity({ meaning: 'Dry mass delivered', unit: 't', min: 0.1, max: 200 }),
    }),
  ),
})

/** What tells one tine from another: the outside makes the hole, the inside takes the core. */
export const tineDiameters = {
  holeDiameterMm: quantity({
    meaning: 'Outside diameter of the tine: the hole',
    unit: 'mm',
    min: 2,
    max: 40,
  }),
  coreDiameterMm: quantity({
    meaning: 'Inside diameter of the tine: the core; 0 for solid',
    unit: 'mm',
    min: 0,
    max: 38,
  }),
}

/** Tines of one kind in stock, and what is still to come. A set is a full complement for one machine; how many greens it lasts is told in the prescription (`setLifeGreens`). */
export const tineStore = v.object({
  id,
  ...tineDiameters,
  sets: quantity({
    meaning: 'Sets in stock; one that is half worn counts half',
    unit: '1',
    min: 0,
    max: 200,
  }),
  deliveries: v.array(
    v.object({
      date: plainDate,
      time: clockTime,
      sets: quantity({ meaning: 'Sets delivered', unit: '1', min: 0.1, max: 200 }),
    }),
  ),
})

/** A date that golfers hold: which greens must be in play when. */
export const fixture = v.object({
  id,
  name,
  date: plainDate,
  from: clockTime,
  to: clockTime,
  greens: v.union([v.literal('all'), v.array(id)]),
})

/** The club's own choices. */
export const settings = v.object({
  rainStopMmPerH: quantity({
    meaning: 'An hour with this much rain counts as rain',
    unit: 'mm/h',
    min: 0.05,
    max: 10,
  }),
  darkFrom: v.nullable(clockTime),
  mayStandDryNight: v.boolean(),
  openGreensCap: count({ meaning: 'Greens opened and not finished at one time, at most', min: 1, max: 36 }),
  firstGreenCheckMin: count({
    meaning: 'Time to check the first green (depth, cores, holes, lifting) before the next is opened',
    min: 0,
    max: 120,
  }),
  packUpMin: count({
    meaning: 'Last minutes of a shift for bringing machines home and washing down',
    min: 0,
    max: 120,
  }),
  detourFactor: quantity({
    meaning: 'Way driven for each metre of straight line',
    unit: '1',
    min: 1,
    max: 5,
  }),
  personTravelMPerS: quantity({
    meaning: 'Speed of a person between greens',
    unit: 'm/s',
    min: 0.5,
    max: 10,
  }),
  deepFromMm: quantity({
    meaning: 'Work this deep counts as deep: services must be located first',
    unit: 'mm',
    min: 50,
    max: 400,
  }),
  weather: v.record(v.string(), v.number()),
})

/** Units a club wants to read, quantity by quantity; storage is always SI. */
export const unitsWanted = v.object({
  tine: v.picklist(['mm', 'in']),
  depth: v.picklist(['mm', 'in']),
  sand: v.picklist(['t', 'shortTon']),
  area: v.picklist(['m2', 'ft2']),
  distance: v.picklist(['m', 'yd']),
  temperature: v.picklist(['C', 'F']),
  rain: v.picklist(['mm', 'in']),
})

/** A whole course: what the file holds after it was read and checked. Version 1. */
export const course = v.object({
  version: v.literal(1),
  id,
  name,
  timeZone: v.pipe(v.string(), v.minLength(1)),
  altitudeM: quantity({ meaning: 'Height above sea', unit: 'm', min: -400, max: 5000 }),
  now: v.nullable(v.pipe(v.string(), v.isoTimestamp())),
  greens: v.pipe(v.array(green), v.minLength(1)),
  places: v.array(place),
  machines: v.array(machine),
  people: v.array(person),
  stores: v.array(sandStore),
  /** Sets of tines; absent where the club does not keep count of them. */
  tineSets: v.optional(v.array(tineStore)),
  fixtures: v.array(fixture),
  settings,
  units: unitsWanted,
})

export type Green = Readonly<v.InferOutput<typeof green>>
export type Place = Readonly<v.InferOutput<typeof place>>
export type Machine = Readonly<v.InferOutput<typeof machine>>
export type Person = Readonly<v.InferOutput<typeof person>>
export type SandStore = Readonly<v.InferOutput<typeof sandStore>>
export type TineStore = Readonly<v.InferOutput<typeof tineStore>>
export type Fixture = Readonly<v.InferOutput<typeof fixture>>
export type Settings = Readonly<v.InferOutput<typeof settings>>
export type UnitsWanted = Readonly<v.InferOutput<typeof unitsWanted>>
export type Course = Readonly<v.InferOutput<typeof course>>
