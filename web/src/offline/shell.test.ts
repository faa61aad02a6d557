import { describe, expect, it } from 'vitest'
import { asksServerFirst, cachesToDrop, isScreenPath } from './shell.ts'

describe('isScreenPath', () => {
  it('takes the addresses of screens, whatever they are called', () => {
    expect(['/', '/green/g03', '/greensward', '/join', '/apiary', '/healthy'].map(isScreenPath)).toEqual(
      Array.from({ length: 6 }, () => true),
    )
  })

  it('leaves the server’s own addresses and files to the server', () => {
    const others = ['/api', '/api/courses', '/health', '/greens/AbC', '/favicon.svg', '/assets/index-x.js']
    expect(others.map(isScreenPath)).toEqual(others.map(() => false))
  })
})

describe('cachesToDrop', () => {
  it('keeps the version itself and the one before it, on which a page may still stand', () => {
    expect(cachesToDrop(['swardwright a', 'swardwright b', 'swardwright c'], 'c')).toEqual(['swardwright a'])
  })

  it('keeps the newest other one where an old version comes back', () => {
    expect(cachesToDrop(['swardwright a', 'swardwright b', 'swardwright c'], 'a')).toEqual(['swardwright b'])
  })

  it('touches nothing that is not ours', () => {
    expect(cachesToDrop(['tiles', 'swardwright a'], 'b')).toEqual([])
  })
})

it('asks the server first only on the machine that serves', () => {
  expect(['127.0.0.1', 'localhost', 'greens.local', '192.168.1.20'].map(asksServerFirst)).toEqual([
    true,
    true,
    false,
    false,
  ])
})
