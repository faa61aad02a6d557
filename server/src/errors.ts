import type { CalculationError } from '@swardwright/engine'
import type { Role, Rule } from '@swardwright/journal'
import { calculationErrorWords } from '@swardwright/present'

/** Everything that a request can be told. Closed. */
export type ApiError =
  | { readonly type: 'loginNeeded' }
  | { readonly type: 'tokenUnknown' }
  | { readonly type: 'roleNotAllowed'; readonly role: Role; readonly allowed: Rule }
  | { readonly type: 'foreignOrigin'; readonly origin: string }
  | { readonly type: 'originMissing' }
  | { readonly type: 'courseUnknown'; readonly course: string }
  | { readonly type: 'pageUnknown' }
  | { readonly type: 'routeUnknown'; readonly method: string; readonly path: string }
  | {
      readonly type: 'badRequest'
      readonly where: 'path' | 'query' | 'body' | 'header'
      readonly field: string
      readonly expected: string
    }
  | { readonly type: 'notJson' }
  | { readonly type: 'wrongCode' }
  | { readonly type: 'wrongPassword' }
  | { readonly type: 'alreadySetUp' }
  | { readonly type: 'setUpFirst' }
  | { readonly type: 'noAccount' }
  | { readonly type: 'linkUnknown' }
  | { readonly type: 'nameTaken'; readonly name: string }
  | { readonly type: 'accessUnknown'; readonly id: string }
  | { readonly type: 'notYours'; readonly role: Role }
  | { readonly type: 'lastManager' }
  | { readonly type: 'oneCourseOnly' }
  | { readonly type: 'wrongOffset'; readonly received: number }
  | { readonly type: 'hashDiffers'; readonly sha256: string }
  | { readonly type: 'blobUnknown'; readonly sha256: string }
  | { readonly type: 'rangeUnknown'; readonly length: number }
  | { readonly type: 'wrongMedia' }
  | { readonly type: 'tooLarge'; readonly maxBytes: number }
  | { readonly type: 'tooOften' }
  | { readonly type: 'tooManyGuesses'; readonly minutes: number }
  | { readonly type: 'storeFull' }
  | { readonly type: 'internal' }
  | CalculationError

type Entry<E> = { readonly status: number; readonly words: (error: E) => string }

type Catalogue = { readonly [T in ApiError['type']]: Entry<Extract<ApiError, { type: T }>> }

const CALCULATION: Entry<CalculationError> = { status: 400, words: calculationErrorWords }

/** The HTTP status and the sentence of each error. */
const CATALOGUE: Catalogue = {
  loginNeeded: {
    status: 401,
    words: () =>
      'this needs a log-in; a script sends an access token as Authorization: Bearer TOKEN, made with swardwright token create',
  },
  tokenUnknown: { status: 401, words: () => 'the access token is unknown or was revoked' },
  roleNotAllowed: {
    status: 403,
    words: ({ role, allowed }) => `the role ${role} may not do this; it is for ${allowed.join(', ')}`,
  },
  foreignOrigin: {
    status: 403,
    words: ({ origin }) => `a page of ${origin} may not change anything here`,
  },
  originMissing: {
    status: 403,
    words: () =>
      'a change with a cookie must say which page it comes from (Origin); scripts use an access token',
  },
  courseUnknown: { status: 404, words: ({ course }) => `there is no course ${course}` },
  pageUnknown: { status: 404, words: () => 'this address leads nowhere, or not any more' },
  routeUnknown: { status: 404, words: ({ method, path }) => `there is nothing at ${method} ${path}` },
  badRequest: {
    status: 400,
    words: ({ where, field, expected }) => `${where} field ${field} must be ${expected}`,
  },
  notJson: { status: 400, words: () => 'the body is not JSON, or has a field called __proto__' },
  wrongCode: { status: 403, words: () => 'this is not the code that the server printed when it started' },
  wrongPassword: { status: 403, words: () => 'name or password is not right' },
  alreadySetUp: { status: 409, words: () => 'the manager’s account is made already; log in with it' },
  setUpFirst: { status: 409, words: () => 'the manager’s own account comes first' },
  noAccount: {
    status: 409,
    words: () => 'this access has no password: it is a device, a token or the machine itself',
  },
  linkUnknown: {
    status: 410,
    words: () => 'this join link was used, has ended or never was; ask for a new one',
  },
  nameTaken: { status: 409, words: ({ name }) => `there is an account called ${name} already` },
  accessUnknown: {
    status: 404,
    words: ({ id }) => `there is no account, device or link ${id} that is still good`,
  },
  notYours: {
    status: 403,
    words: ({ role }) => `a deputy lets in and out crew and committee, not the role ${role}`,
  },
  oneCourseOnly: {
    status: 403,
    words: () => 'this device sees one course only; this is for somebody who sees them all',
  },
  lastManager: { status: 409, words: () => 'this is the only manager’s account; make another first' },
  wrongOffset: { status: 409, words: ({ received }) => `go on at byte ${received}; that much is here` },
  hashDiffers: {
    status: 422,
    words: ({ sha256 }) => `what came has not the SHA-256 ${sha256}; send it anew`,
  },
  blobUnknown: { status: 404, words: ({ sha256 }) => `there is no whole photo ${sha256}` },
  rangeUnknown: {
    status: 416,
    words: ({ length }) => `the photo has ${length} bytes; ask for a part of them`,
  },
  wrongMedia: { status: 415, words: () => 'send the body as Content-Type: application/json' },
  tooLarge: {
    status: 413,
    words: ({ maxBytes }) => `the body is larger than ${maxBytes / 1_000_000} MB; send it in parts`,
  },
  tooOften: { status: 429, words: () => 'too many requests; wait a minute' },
  tooManyGuesses: {
    status: 429,
    words: ({ minutes }) => `too many wrong guesses; wait ${minutes} minutes, then try again`,
  },
  storeFull: {
    status: 507,
    words: () =>
      'the disk of the server is full, and nothing of this request was kept; make room, then try again',
  },
  internal: {
    status: 500,
    words: () => 'the server failed, and nothing of this request was kept for sure; try again',
  },
  unknownItem: { ...CALCULATION, status: 404 },
  missing: CALCULATION,
  wrongType: CALCULATION,
  outOfRange: CALCULATION,
  notDefined: CALCULATION,
}

/** What a failed request answers: the facts of the error and one sentence. */
export type ErrorAnswer = {
  readonly status: number
  readonly body: { readonly error: ApiError & { readonly message: string } }
}

/** An error as an HTTP answer. */
export const errorAnswer = (error: ApiError): ErrorAnswer => {
  // The key and the error are of one type by the table's own type; the compiler can't follow that through the index.
  const { status, words } = CATALOGUE[error.type] as Entry<ApiError>
  return { status, body: { error: { ...error, message: words(error) } } }
}
