import type { CalculationError } from '@swardwright/engine'
import type { Role, Rule } from '@swardwright/journal'
import { calculationErrorWords } from '@swardwright/present'

/** Everything that a request can be told. Closed. */
export type ApiError =
  | { readonly type: 'loginNeeded' }
  | { readonly type: 'tokenUnknown' }
  | { readonly type: 'roleNotAllowed'; readonly role: Role; readonly allowed: Rule }
  | { readonly type: 'foreignOrigin'; readonly origin: string }
  | { readonly type: 'courseUnknown'; readonly course: string }
  | { readonly type: 'routeUnknown'; readonly method: string; readonly path: string }
  | {
      readonly type: 'badRequest'
      readonly where: 'path' | 'query' | 'body'
      readonly field: string
      readonly expected: string
    }
  | { readonly type: 'notJson' }
  | { readonly type: 'wrongMedia' }
  | { readonly type: 'tooLarge'; readonly maxBytes: number }
  | { readonly type: 'tooOften' }
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
      'this needs an access token, sent as Authorization: Bearer TOKEN; make one with swardwright token create',
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
  courseUnknown: { status: 404, words: ({ course }) => `there is no course ${course}` },
  routeUnknown: { status: 404, words: ({ method, path }) => `there is nothing at ${method} ${path}` },
  badRequest: {
    status: 400,
    words: ({ where, field, expected }) => `${where} field ${field} must be ${expected}`,
  },
  notJson: { status: 400, words: () => 'the body is not JSON' },
  wrongMedia: { status: 415, words: () => 'send the body as Content-Type: application/json' },
  tooLarge: {
    status: 413,
    words: ({ maxBytes }) => `the body is larger than ${maxBytes / 1_000_000} MB; send it in parts`,
  },
  tooOften: { status: 429, words: () => 'too many requests; wait a minute' },
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
