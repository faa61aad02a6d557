import { Ajv2020 } from 'ajv/dist/2020.js'
import { beforeAll, describe, expect, it } from 'vitest'
import { CATALOGUE } from '@swardwright/engine'
import { KINDS, ROUTES, type Entry } from '@swardwright/journal'
import { openApiDocument } from './openApi.ts'
import { exampleEntry } from './testing/entries.ts'

/**
 * The shape of a document by the OpenAPI Specification 3.1.0: 4.8.1 OpenAPI Object, 4.8.2 Info, 4.8.8 Paths, 4.8.10 Operation, 4.8.12 Parameter,
 * 4.8.13 Request Body, 4.8.14 Media Type, 4.8.16 Responses, 4.8.27 Security Scheme; written out by hand for the parts that we use.
 * Nothing else is let in, so a misspelt field fails.
 */
const content = {
  type: 'object',
  minProperties: 1,
  propertyNames: { pattern: '^[a-z]+/[a-z-]+$' },
  additionalProperties: {
    type: 'object',
    required: ['schema'],
    additionalProperties: false,
    properties: { schema: { type: 'object' } },
  },
}
const parameter = {
  type: 'object',
  required: ['name', 'in', 'schema'],
  additionalProperties: false,
  properties: {
    name: { type: 'string' },
    in: { enum: ['path', 'query'] },
    required: { type: 'boolean' },
    schema: { type: 'object' },
  },
  anyOf: [
    { properties: { in: { const: 'query' } } },
    { required: ['required'], properties: { required: { const: true } } },
  ],
}
const operation = {
  type: 'object',
  required: ['responses'],
  additionalProperties: false,
  properties: {
    operationId: { type: 'string' },
    summary: { type: 'string' },
    description: { type: 'string' },
    security: {
      type: 'array',
      items: { type: 'object', additionalProperties: { type: 'array', items: { type: 'string' } } },
    },
    parameters: { type: 'array', items: parameter },
    requestBody: {
      type: 'object',
      required: ['content'],
      additionalProperties: false,
      properties: { required: { type: 'boolean' }, content },
    },
    responses: {
      type: 'object',
      minProperties: 1,
      propertyNames: { pattern: '^([1-5]([0-9]{2}|XX)|default)$' },
      additionalProperties: {
        type: 'object',
        required: ['description'],
        additionalProperties: false,
        properties: { description: { type: 'string' }, content },
      },
    },
  },
}
const document31 = {
  type: 'object',
  required: ['openapi', 'info', 'paths'],
  additionalProperties: false,
  properties: {
    openapi: { type: 'string', pattern: '^3\\.1\\.\\d+$' },
    info: {
      type: 'object',
      required: ['title', 'version'],
      additionalProperties: false,
      properties: {
        title: { type: 'string' },
        version: { type: 'string' },
        summary: { type: 'string' },
        license: {
          type: 'object',
          required: ['name'],
          additionalProperties: false,
          properties: { name: { type: 'string' }, identifier: { type: 'string' } },
        },
      },
    },
    paths: {
      type: 'object',
      propertyNames: { pattern: '^/' },
      additionalProperties: {
        type: 'object',
        additionalProperties: false,
        properties: { get: operation, post: operation, put: operation, delete: operation },
      },
    },
    components: {
      type: 'object',
      additionalProperties: false,
      properties: {
        schemas: {
          type: 'object',
          propertyNames: { pattern: '^[a-zA-Z0-9._-]+$' },
          additionalProperties: { type: 'object' },
        },
        securitySchemes: {
          type: 'object',
          additionalProperties: {
            type: 'object',
            required: ['type'],
            oneOf: [
              {
                required: ['scheme'],
                properties: { type: { const: 'http' }, scheme: { const: 'bearer' } },
              },
              {
                required: ['name', 'in'],
                properties: { type: { const: 'apiKey' }, name: { type: 'string' }, in: { const: 'cookie' } },
              },
            ],
          },
        },
      },
    },
  },
}

type Operation = {
  readonly operationId: string
  readonly parameters?: readonly { readonly name: string; readonly in: string }[]
  readonly security: readonly Readonly<Record<string, unknown>>[]
  readonly requestBody?: { readonly content: Readonly<Record<string, { readonly schema: object }>> }
  readonly responses: Readonly<
    Record<string, { readonly content?: Readonly<Record<string, { readonly schema: object }>> }>
  >
}
type Document = {
  readonly paths: Readonly<Record<string, Readonly<Record<string, Operation>>>>
  readonly components: { readonly schemas: Readonly<Record<string, object>> }
}

const ajv = new Ajv2020({ strict: false, validateFormats: false })
let document: Document
let operations: readonly { readonly path: string; readonly operation: Operation }[]
beforeAll(() => {
  document = JSON.parse(JSON.stringify(openApiDocument()))
  operations = Object.entries(document.paths).flatMap(([path, methods]) =>
    Object.values(methods).map((found) => ({ path, operation: found })),
  )
})

const schemasOf = ({ requestBody, responses }: Operation): readonly object[] =>
  [requestBody, ...Object.values(responses)].flatMap((part) =>
    Object.values(part?.content ?? {}).map(({ schema }) => schema),
  )

describe('the OpenAPI document', () => {
  it('is OpenAPI 3.1', () => {
    expect(ajv.validate(document31, document), JSON.stringify(ajv.errors)).toBe(true)
  })

  it('names each operation once, and each parameter that its path has', () => {
    const ids = operations.map(({ operation: found }) => found.operationId)
    expect(new Set(ids).size).toBe(ids.length)
    for (const { path, operation: found } of operations) {
      const inPath = [...path.matchAll(/\{([^}]+)\}/gu)].map((match) => match[1])
      const told = (found.parameters ?? []).filter((one) => one.in === 'path').map((one) => one.name)
      expect(told).toEqual(inPath)
    }
  })

  it('has JSON Schemas that hold as such, and no reference into nothing', () => {
    const schemas = [
      ...operations.flatMap(({ operation: found }) => schemasOf(found)),
      ...Object.values(document.components.schemas),
    ]
    expect(schemas.length).toBeGreaterThan(CATALOGUE.length * 3)
    for (const schema of schemas) {
      const isReference = '$ref' in schema
      if (isReference) expect(String(schema.$ref).replace('#/components/schemas/', '')).toBe('Error')
      else expect(ajv.validateSchema(schema), JSON.stringify(ajv.errors)).toBe(true)
    }
  })

  it('has every route of the table and every calculation', () => {
    const told = operations.map(({ path }) => path)
    for (const route of Object.values(ROUTES)) expect(told).toContain(route.path.replace(/:(\w+)/gu, '{$1}'))
    for (const item of CATALOGUE) expect(told).toContain(`/api/calculations/${item.name}`)
  })

  it('says which routes need a token', () => {
    const security = (path: string, method: string) => document.paths[path]?.[method]?.security
    expect(security('/health', 'get')).toEqual([])
    expect(security('/api/courses', 'post')).toEqual([{ token: [] }, { cookie: [] }])
  })

  it('accepts the published rows of each calculation and refuses a wrong field, in its schema of the input', () => {
    for (const item of CATALOGUE) {
      const schema =
        document.paths[`/api/calculations/${item.name}`]?.['post']?.requestBody?.content['application/json']
          ?.schema
      if (schema === undefined) throw new Error(`${item.name} has no input`)
      const validate = ajv.compile(schema)
      for (const check of item.checks) expect(validate(check.input), `${item.name} ${check.id}`).toBe(true)
      expect(validate('a word')).toBe(false)
    }
  })

  it('tells units and ranges of numbers', () => {
    const schema =
      document.paths['/api/calculations/tining.areaShare']?.['post']?.requestBody?.content['application/json']
        ?.schema
    expect(schema).toMatchObject({
      properties: { holeDiameterMm: { type: 'number', minimum: 1, maximum: 100, 'x-unit': 'mm' } },
    })
  })

  it('accepts an entry of each kind by its schema Entry', () => {
    const validate = ajv.compile(document.components.schemas['Entry'] ?? {})
    for (const name of Object.keys(KINDS) as (keyof typeof KINDS)[]) {
      const entry: Entry = exampleEntry(name, 1)
      expect(validate(entry), name).toBe(true)
      expect(validate({ ...entry, at: 'noon' })).toBe(false)
    }
  })
})
