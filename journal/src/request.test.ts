import { describe, expect, it } from 'vitest'
import { requestFor } from './request.ts'
import { ROUTES, isAllowed } from './routes.ts'

describe('a request for a route', () => {
  it('fills the path, the query and the body', () => {
    expect(
      requestFor('pullEntries', { params: { course: 'a b' }, query: { after: '0', limit: '10' } }),
    ).toEqual({ method: 'GET', url: '/api/courses/a%20b/entries?after=0&limit=10', body: null })
    expect(requestFor('addCourse', { body: { name: 'Far Links' } })).toEqual({
      method: 'POST',
      url: '/api/courses',
      body: '{"name":"Far Links"}',
    })
    expect(requestFor('pullEntries', { params: { course: 'x' }, query: {} }).url).toBe(
      '/api/courses/x/entries',
    )
  })

  it('throws when a part of the path is missing', () => {
    expect(() => requestFor('live')).toThrow('the path needs course')
  })
})

describe('the table of routes', () => {
  it('has each method and path once', () => {
    const names = Object.values(ROUTES).map((route) => `${route.method} ${route.path}`)
    expect(new Set(names).size).toBe(names.length)
  })

  it('lets nobody in by the name of a role that is not in the rule', () => {
    expect(isAllowed(['manager'], 'manager')).toBe(true)
    expect(isAllowed(['manager'], 'crew')).toBe(false)
    expect(isAllowed(['manager'], null)).toBe(false)
    expect(isAllowed(['public', 'manager'], null)).toBe(true)
  })

  it('fills a parameter whose name has digits', () => {
    const sha256 = 'a'.repeat(64)
    expect(requestFor('putBlob', { params: { course: 'links', sha256 } })).toMatchObject({
      method: 'PUT',
      url: `/api/courses/links/blobs/${sha256}`,
    })
  })
})
