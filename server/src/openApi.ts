import { CATALOGUE } from '@swardwright/engine'
import { ROUTES, entrySchema, type Route, type RouteName, type Rule } from '@swardwright/journal'
import { jsonSchemaOf, type JsonSchema } from './jsonSchema.ts'
import { SERVER_VERSION } from './version.ts'

const json = (schema: JsonSchema) => ({ 'application/json': { schema } })

const ERROR_SCHEMA: JsonSchema = {
  type: 'object',
  required: ['error'],
  properties: {
    error: {
      type: 'object',
      required: ['type', 'message'],
      properties: {
        type: { type: 'string', description: 'Which error it is; the facts stand beside it' },
        message: { type: 'string', description: 'One sentence for people' },
      },
    },
  },
}

/** `:course` of the table is `{course}` in the document. */
const templated = (path: string): string => path.replace(/:([a-zA-Z][a-zA-Z0-9]*)/gu, '{$1}')

const isSchema = (value: unknown): value is JsonSchema => typeof value === 'object' && value !== null

/** The fields of a flat object schema as parameters. */
const parametersOf = (schema: Route['params'], where: 'path' | 'query'): readonly JsonSchema[] => {
  if (schema === null) return []
  const { properties } = jsonSchemaOf(schema, 'input')
  return Object.entries(isSchema(properties) ? properties : {}).map(([name, property]) => ({
    name,
    in: where,
    required: where === 'path',
    schema: property,
  }))
}

/** A route that lets in somebody without log-in has no security; all others take a token. */
const securityOf = (rule: Rule): readonly JsonSchema[] =>
  rule.includes('public') ? [] : [{ token: [] }, { cookie: [] }]

const FILE: JsonSchema = {
  'application/octet-stream': { schema: { type: 'string', contentMediaType: 'application/octet-stream' } },
}

const bodyOf = (route: Route): JsonSchema => {
  if (route.takesBytes === true) return { requestBody: { required: false, content: FILE } }
  return route.body === null
    ? {}
    : { requestBody: { required: true, content: json(jsonSchemaOf(route.body, 'input')) } }
}

const contentOf = (route: Route): JsonSchema => {
  if (route.answer === 'bytes') return FILE
  const schema = jsonSchemaOf(route.output, 'output')
  if (route.answer === 'page') return { 'text/html': { schema } }
  return route.answer === 'events'
    ? {
        'text/event-stream': {
          schema: {
            type: 'string',
            description: `Events; the data of each is JSON: ${JSON.stringify(schema)}`,
          },
        },
      }
    : json(schema)
}

const operationOf = (name: string, route: Route): JsonSchema => ({
  operationId: name,
  summary: route.summary,
  description: `For: ${route.rule.join(', ')}.`,
  security: securityOf(route.rule),
  parameters: [...parametersOf(route.params, 'path'), ...parametersOf(route.query, 'query')],
  ...bodyOf(route),
  responses: {
    200: { description: 'Done.', content: contentOf(route) },
    default: {
      description: 'Not done; the error says why.',
      content: json({ $ref: '#/components/schemas/Error' }),
    },
  },
})

/** Each calculation as a path of its own, so that its input and output are told exactly. */
const calculationPaths = (): Readonly<Record<string, JsonSchema>> =>
  Object.fromEntries(
    CATALOGUE.map((item) => {
      const { parameters: _name, ...operation } = operationOf(`calculate:${item.name}`, {
        ...ROUTES.calculate,
        summary: item.title,
        params: null,
        body: item.inputs,
        output: item.outputs,
      })
      return [
        ROUTES.calculate.path.replace(':name', item.name),
        { post: { ...operation, description: item.words } },
      ]
    }),
  )

const routePaths = (): Readonly<Record<string, JsonSchema>> => {
  const paths: Record<string, Record<string, unknown>> = {}
  for (const [name, route] of Object.entries(ROUTES) as [RouteName, Route][]) {
    const path = templated(route.path)
    paths[path] = { ...paths[path], [route.method.toLowerCase()]: operationOf(name, route) }
  }
  return paths
}

/** The OpenAPI 3.1 document of this server, from the one table of routes and the catalogue. */
export const openApiDocument = (): JsonSchema => ({
  openapi: '3.1.0',
  info: {
    title: 'Swardwright',
    version: SERVER_VERSION,
    summary: 'Journals of golf courses, and the calculations behind a greens renovation.',
    license: { name: 'Apache-2.0', identifier: 'Apache-2.0' },
  },
  paths: { ...routePaths(), ...calculationPaths() },
  components: {
    securitySchemes: {
      cookie: {
        type: 'apiKey',
        in: 'cookie',
        name: 'swardwright',
        description: 'Set by a log-in or a join link',
      },
      token: { type: 'http', scheme: 'bearer', description: 'Made by swardwright token create' },
    },
    schemas: { Entry: jsonSchemaOf(entrySchema, 'input'), Error: ERROR_SCHEMA },
  },
})
