import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { holdLease, takeTurns, type LeaseBook, type Turns } from './turns.ts'

const book = (): LeaseBook => {
  const lines = new Map<string, string>()
  return { getItem: (name) => lines.get(name) ?? null, setItem: (name, text) => void lines.set(name, text) }
}

it('gives the turn to the first page and keeps it there while that page looks again', () => {
  const one = book()
  expect(holdLease(one, 'sync', 'a', 0)).toBe(true)
  expect(holdLease(one, 'sync', 'b', 1_000)).toBe(false)
  expect(holdLease(one, 'sync', 'a', 4_000)).toBe(true)
  expect(holdLease(one, 'sync', 'b', 9_000)).toBe(false)
})

it('hands the turn on once the page that had it has not looked for six seconds', () => {
  const one = book()
  holdLease(one, 'sync', 'a', 0)
  expect(holdLease(one, 'sync', 'b', 6_000)).toBe(true)
  expect(holdLease(one, 'sync', 'a', 6_001)).toBe(false)
})

it('is not held up by a lease from before the clock was set back', () => {
  const one = book()
  holdLease(one, 'sync', 'a', 86_400_000)
  expect(holdLease(one, 'sync', 'b', 0)).toBe(true)
})

it('gives each course turns of its own', () => {
  const one = book()
  holdLease(one, 'sync x', 'a', 0)
  expect(holdLease(one, 'sync y', 'b', 0)).toBe(true)
})

/** A browser's locks by the rules of the Web Locks standard: one holder, a queue, `steal` ends the holder with an AbortError; a page that goes lets go. */
const browserLocks = () => {
  type Held = { readonly page: string; readonly end: (error: Error) => void }
  type Waiting = { readonly page: string; readonly grant: () => void }
  let held: Held | null = null
  let queue: readonly Waiting[] = []
  const next = (): void => {
    const [first, ...rest] = queue
    if (held !== null || first === undefined) return
    queue = rest
    first.grant()
  }
  const forPage = (page: string) => ({
    request: (_name: string, { steal }: { readonly steal: boolean }, work: () => Promise<unknown>) =>
      new Promise((_resolve, reject) => {
        const grant = (): void => {
          held = { page, end: reject }
          void work()
        }
        if (!steal) {
          queue = [...queue, { page, grant }]
          return next()
        }
        held?.end(new DOMException('stolen', 'AbortError'))
        grant()
      }),
  })
  return {
    forPage,
    goes: (page: string): void => {
      queue = queue.filter((one) => one.page !== page)
      if (held?.page === page) held = null
      next()
    },
  }
}

afterEach(() => {
  vi.unstubAllGlobals()
})

describe('turns by the browser’s locks', () => {
  const pages = () => {
    const locks = browserLocks()
    const begun: string[] = []
    const open = (page: string): Turns => {
      vi.stubGlobal('navigator', { locks: locks.forPage(page) })
      return takeTurns('swardwright sync ossenby', page, () => begun.push(page))
    }
    return { open, begun, goes: locks.goes }
  }

  it('belong to the page that was first, and are handed on when it goes', () => {
    const { open, begun, goes } = pages()
    const [a, b, c] = [open('a'), open('b'), open('c')]
    expect([a.isMine(), b.isMine(), c.isMine()]).toEqual([true, false, false])
    goes('a')
    expect([b.isMine(), c.isMine()]).toEqual([true, false])
    goes('b')
    expect(c.isMine()).toBe(true)
    expect(begun).toEqual(['a', 'b', 'c'])
  })

  it('skip a page that went while it waited', () => {
    const { open, goes } = pages()
    open('a')
    open('b')
    const c = open('c')
    goes('b')
    goes('a')
    expect(c.isMine()).toBe(true)
  })

  it('are taken from a page that is silent, which waits for its next turn', async () => {
    const { open, begun, goes } = pages()
    const [a, b] = [open('a'), open('b')]
    b.take()
    await vi.waitFor(() => expect([a.isMine(), b.isMine()]).toEqual([false, true]))
    goes('b')
    expect(a.isMine()).toBe(true)
    expect(begun).toEqual(['a', 'b', 'a'])
  })
})

describe('turns where the browser has no locks, as over plain http', () => {
  beforeEach(() => {
    vi.useFakeTimers()
  })
  afterEach(() => {
    vi.useRealTimers()
  })

  it('belong to one page, and go to another that takes them', () => {
    const shared = book()
    vi.stubGlobal('navigator', {})
    vi.stubGlobal('localStorage', shared)
    const begun: string[] = []
    const [a, b] = ['a', 'b'].map((page) => takeTurns('sync', page, () => begun.push(page)))
    vi.advanceTimersByTime(60_000)
    expect([a?.isMine(), b?.isMine()]).toEqual([true, false])
    b?.take()
    vi.advanceTimersByTime(60_000)
    expect([a?.isMine(), b?.isMine()]).toEqual([false, true])
    expect(begun).toEqual(['a', 'b'])
  })

  it('are each page’s own where it may write nothing down: pushing twice does no harm', () => {
    const closed = {
      getItem: () => {
        throw new Error('storage is shut')
      },
      setItem: () => undefined,
    }
    vi.stubGlobal('navigator', {})
    vi.stubGlobal('localStorage', closed)
    expect(takeTurns('sync', 'a', () => undefined).isMine()).toBe(true)
  })
})
