import * as v from 'valibot'
import { OPERATIONS, greenSchema, idSchema } from '@swardwright/engine'
import { counted, measured } from './measured.ts'
import { ROLES } from './roles.ts'
import { words } from './settledBodies.ts'
import { sha256 } from './sha256Schema.ts'
import { entryId } from './uuid.ts'

const label = (meaning: string) =>
  v.pipe(v.string(), v.trim(), v.minLength(1), v.maxLength(120), v.description(meaning))

const massT = measured('Dry mass of sand', 't', 0, 2000)

/** Body of `deliveryReceived`: sand that came; `at` of the entry tells when. */
export const deliveryReceivedBody = v.strictObject({
  store: v.pipe(idSchema, v.description('Id of the sand store of the course')),
  massT,
  loads: v.optional(counted('Lorry loads', 1, 100)),
  supplier: v.optional(label('Who brought it')),
  ticket: v.optional(label('Number of the delivery note')),
  moisturePercent: v.optional(measured('Water in it', 'percent of dry mass', 0, 40)),
})

/** Body of `stockUsed`: sand that left a store, onto a green or elsewhere. */
export const stockUsedBody = v.strictObject({
  store: v.pipe(idSchema, v.description('Id of the sand store of the course')),
  massT,
  green: v.optional(idSchema),
  words: v.optional(words),
})

const depthMm = (meaning: string) => measured(meaning, 'mm', 0, 600)

/** Body of `measureTaken`: one reading, or one laboratory result, of one green. */
export const measureTakenBody = v.variant('measure', [
  v.strictObject({
    measure: v.literal('firmness'),
    green: idSchema,
    decelerationG: measured('Greatest deceleration of a dropped weight', 'gravities', 0, 500),
  }),
  v.strictObject({
    measure: v.literal('penetration'),
    green: idSchema,
    depthMm: depthMm('How far the probe went in'),
  }),
  v.strictObject({
    measure: v.literal('moisture'),
    green: idSchema,
    waterPercent: measured('Water by volume', 'percent', 0, 100),
    overMm: v.optional(depthMm('Length of the rods')),
  }),
  v.strictObject({
    measure: v.literal('speed'),
    green: idSchema,
    rollM: measured('How far the ball rolls, mean of both ways', 'm', 0, 8),
  }),
  v.strictObject({
    measure: v.literal('roots'),
    green: idSchema,
    depthMm: depthMm('Depth of most white roots'),
  }),
  v.strictObject({
    measure: v.literal('thatch'),
    green: idSchema,
    depthMm: depthMm('Thickness of the thatch'),
  }),
  v.strictObject({ measure: v.literal('hole'), green: idSchema, depthMm: depthMm('Depth of a tine hole') }),
  v.strictObject({
    measure: v.literal('cover'),
    green: idSchema,
    livePercent: measured('Living leaf', 'percent of the ground', 0, 100),
    photo: v.optional(sha256),
  }),
  v.strictObject({
    measure: v.literal('soilTemperature'),
    green: idSchema,
    temperatureC: measured('Temperature of the soil', 'degrees Celsius', -20, 50),
    atMm: v.optional(depthMm('Depth of the probe')),
  }),
  v.strictObject({
    measure: v.literal('organic'),
    green: idSchema,
    test: greenSchema.entries.organicTests.item,
  }),
])

/** Media types of photos that are taken. */
export const PHOTO_TYPES = ['image/jpeg', 'image/png', 'image/webp'] as const

/** What photos are taken for. */
export const PHOTO_PURPOSES = ['recovery', 'problem', 'profile', 'other'] as const

/** Body of `photoTaken`: what the picture is of; the picture itself is sent apart and found by its hash. */
export const photoTakenBody = v.strictObject({
  sha256,
  type: v.picklist(PHOTO_TYPES),
  bytes: counted('Length of the file, bytes', 1),
  widthPx: v.optional(counted('Size of the picture, pixels', 1, 30_000)),
  heightPx: v.optional(counted('Size of the picture, pixels', 1, 30_000)),
  green: v.optional(idSchema),
  purpose: v.picklist(PHOTO_PURPOSES),
  operation: v.optional(v.pipe(v.picklist(OPERATIONS), v.description('The step at which it was taken'))),
  about: v.optional(v.pipe(entryId, v.description('Id of the entry that it shows: a problem or a reading'))),
  words: v.optional(words),
})

/** Body of `noticeSent`: what was told to whom, once somebody pressed the button. */
export const noticeSentBody = v.strictObject({
  audience: v.picklist(['members', 'committee', 'crew', 'supplier', 'public']),
  way: v.picklist(['page', 'email', 'message', 'poster', 'calendar', 'spoken']),
  words,
})

/** Body of `accessChanged`: who may come in. Written by the server as it happens, so that nobody comes or goes unseen. */
export const accessChangedBody = v.strictObject({
  change: v.picklist([
    'managerSetUp',
    'accountMade',
    'passwordChanged',
    'joinLinkMade',
    'deviceJoined',
    'accessEnded',
    'membersPageOpened',
    'membersPageClosed',
    'tokenMade',
  ]),
  access: v.pipe(
    v.string(),
    v.maxLength(64),
    v.description('Id of the account, link, device, page or token'),
  ),
  name: label('Name of the person, device or script'),
  role: v.optional(
    v.pipe(v.picklist(ROLES), v.description('None for a page that anybody with its address reads')),
  ),
})

/** What golfers may do on a green, as the manager says it. */
export const PLAYS = ['inPlay', 'onTemporary', 'shut'] as const

/** Body of `playChanged`: a green was opened to golfers, shut, or its hole set on a temporary green. */
export const playChangedBody = v.strictObject({ green: idSchema, play: v.picklist(PLAYS) })
