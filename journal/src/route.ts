import * as v from 'valibot'
import { courseId } from './entry.ts'
import { ROLES, type Role } from './roles.ts'

/** Who may call a route: roles, and `public` for somebody without log-in. */
export type Rule = readonly (Role | 'public')[]

export type AnySchema = v.GenericSchema

/** One route. The server registers it, the app calls it and the OpenAPI document describes it, all from this. */
export type Route = {
  readonly method: 'GET' | 'POST' | 'PUT' | 'DELETE'
  /** Path; a part that begins with a colon is a parameter. */
  readonly path: string
  readonly rule: Rule
  /** One sentence for the document. */
  readonly summary: string
  /**
   * `json` answers once; `events` is a stream of server-sent events, each with the output as its data; `bytes` is a file, or the part of it
   * that `Range` asks for; `page` is a page for a browser, in HTML.
   */
  readonly answer: 'json' | 'events' | 'bytes' | 'page'
  /** True where the body is a file, or the part of it that `Content-Range` names. */
  readonly takesBytes?: true
  /** How often one address may ask in a minute, where that must be slower than for other routes: secrets are tried here. */
  readonly perMinute?: number
  readonly params: AnySchema | null
  readonly query: AnySchema | null
  readonly body: AnySchema | null
  readonly output: AnySchema
}

/** Ties a route to the table’s type without widening it. */
export const route = <const R extends Route>(definition: R): R => definition

export const EVERYBODY: Rule = ['public', ...ROLES]
export const MEMBERS: Rule = ROLES
export const WORKERS: Rule = ['manager', 'deputy', 'crew']
export const DECIDERS: Rule = ['manager', 'deputy']
export const MANAGERS: Rule = ['manager']

/** The parameter of every route of a course. */
export const courseParams = v.object({ course: v.pipe(courseId, v.description('Id of the course')) })

/** A list that is not changed. */
export const listOf = <S extends v.GenericSchema>(item: S, description: string) =>
  v.pipe(v.array(item), v.readonly(), v.description(description))
