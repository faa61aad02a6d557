import { nameKey, type AccountRow, type AccountStore, type PassRow, type PassStore } from './people.ts'

/** Accounts in memory. */
export const memoryAccounts = (): AccountStore => {
  const rows = new Map<string, AccountRow>()
  const living = (): readonly AccountRow[] => [...rows.values()].filter((row) => row.endedAt === null)
  return {
    add: async (row, { onlyFirst }) => {
      if (onlyFirst && living().length > 0) return false
      if (living().some((other) => nameKey(other.name) === nameKey(row.name))) return false
      rows.set(row.id, { ...row, endedAt: null })
      return true
    },
    list: async () => [...rows.values()],
    setSecret: async (id, secret) => {
      const row = rows.get(id)
      if (row !== undefined) rows.set(id, { ...row, secret })
    },
    end: async (id, endedAt) => {
      const row = rows.get(id)
      if (row === undefined || row.endedAt !== null) return false
      rows.set(id, { ...row, endedAt })
      return true
    },
  }
}

/** Sessions, devices and join links in memory. */
export const memoryPasses = (): PassStore => {
  const rows = new Map<string, PassRow>()
  const end: PassStore['end'] = async (id, endedAt) => {
    const row = rows.get(id)
    if (row === undefined || row.endedAt !== null) return false
    rows.set(id, { ...row, endedAt })
    return true
  }
  return {
    add: async (row) => {
      rows.set(row.id, { ...row, endedAt: null })
    },
    list: async () => [...rows.values()],
    findByHash: async (hash) =>
      [...rows.values()].find((row) => row.hash === hash && row.endedAt === null) ?? null,
    end,
    endOfAccount: async (account, endedAt) => {
      for (const row of rows.values()) if (row.account === account) await end(row.id, endedAt)
    },
  }
}
