/** Which page of a browser deals with the server: all of them share one store, so one is enough. */
export type Turns = {
  readonly isMine: () => boolean
  /** Takes the turn from a page that has gone silent. */
  readonly take: () => void
}

/** Where a lease is written. */
export type LeaseBook = Pick<Storage, 'getItem' | 'setItem'>

const LEASE_MS = 6_000

type Lease = { readonly by: string; readonly untilMs: number }

const readLease = (book: LeaseBook, name: string): Lease | null => {
  const [by, until] = (book.getItem(name) ?? '').split(' ')
  const untilMs = Number(until)
  return by === undefined || by === '' || Number.isNaN(untilMs) ? null : { by, untilMs }
}

/**
 * Looks whether the turn is `me`'s, and holds it a few seconds longer if so. A lease that reaches too far ahead was written before the clock
 * was set back, and counts for nothing.
 */
export const holdLease = (book: LeaseBook, name: string, me: string, nowMs: number): boolean => {
  const lease = readLease(book, name)
  const isOthers =
    lease !== null && lease.by !== me && lease.untilMs > nowMs && lease.untilMs <= nowMs + LEASE_MS
  if (!isOthers) book.setItem(name, `${me} ${nowMs + LEASE_MS}`)
  return !isOthers
}

/** Plain http has no locks. Two pages may then both lead for a moment; entries pushed twice are stored once, so that does no harm. */
const byLease = (name: string, me: string, onTurn: () => void): Turns => {
  let mine = false
  const look = (): void => {
    const was = mine
    try {
      mine = holdLease(localStorage, name, me, Date.now())
    } catch {
      mine = true
    }
    if (mine && !was) onTurn()
  }
  look()
  setInterval(look, LEASE_MS / 3)
  return {
    isMine: () => mine,
    take: () => {
      localStorage.setItem(name, '')
      look()
    },
  }
}

/** The browser hands the lock on by itself when a page goes. */
const byLock = (locks: LockManager, name: string, onTurn: () => void): Turns => {
  let mine = false
  const wait = async (steal: boolean): Promise<void> => {
    await locks
      .request(name, { steal }, () => {
        mine = true
        onTurn()
        return new Promise<void>(() => undefined)
      })
      .catch(() => undefined)
    // Only a page that takes the lock away ends the wait above.
    mine = false
    void wait(false)
  }
  void wait(false)
  return { isMine: () => mine, take: () => void wait(true) }
}

/** Waits for this page's turn; `onTurn` is called whenever it comes. `me` tells pages apart. */
export const takeTurns = (name: string, me: string, onTurn: () => void): Turns =>
  'locks' in navigator ? byLock(navigator.locks, name, onTurn) : byLease(name, me, onTurn)
