import * as v from 'valibot'
import { MEMBERS, WORKERS, courseParams, route } from './route.ts'
import { sha256 } from './sha256Schema.ts'

/** Longest photo, bytes. */
export const BLOB_MAX_BYTES = 20_000_000

const blobParams = v.object({ ...courseParams.entries, sha256 })

const bytes = (description: string) =>
  v.pipe(v.number(), v.integer(), v.minValue(0), v.description(description))

/** Photos: sent apart from their entries, in as many pieces as the line allows. */
export const BLOB_ROUTES = {
  putBlob: route({
    method: 'PUT',
    path: '/api/courses/:course/blobs/:sha256',
    rule: WORKERS,
    summary:
      'Takes in a photo whose SHA-256 is the last part of the address: whole, or a piece by Content-Range: bytes FROM-TO/TOTAL. ' +
      'Content-Range: bytes */TOTAL without a body asks how much is here. 200: whole and durable; 202: go on at `received`, ' +
      'also told as Range: bytes=0-LAST; 409: the piece begins elsewhere than the file ends.',
    answer: 'json',
    takesBytes: true,
    params: blobParams,
    query: null,
    body: null,
    output: v.object({
      received: bytes('Bytes that are here'),
      whole: v.pipe(v.boolean(), v.description('True when all are here, with the right hash')),
    }),
  }),
  getBlob: route({
    method: 'GET',
    path: '/api/courses/:course/blobs/:sha256',
    rule: MEMBERS,
    summary: 'A photo, or the part of it that Range: bytes=FROM-TO asks for.',
    answer: 'bytes',
    params: blobParams,
    query: null,
    body: null,
    output: v.unknown(),
  }),
} as const
