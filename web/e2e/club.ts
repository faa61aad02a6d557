import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test as base, type Page } from '@playwright/test'
import { startClubServer, type ClubServer } from './server.ts'

/** A club of its own for each test: fresh data, its own server. */
export type Club = {
  readonly address: () => string
  /** Stops the server and starts it again on the same data and port. */
  readonly restart: () => Promise<void>
  readonly stop: () => Promise<void>
  /** Ends the server as a power cut would. */
  readonly kill: () => Promise<void>
}

const portOf = (server: ClubServer): number => Number(new URL(server.address).port)

/** Tests with a club; a fault of the page fails the test. */
export const test = base.extend<{ club: Club }>({
  club: async ({ page }, use) => {
    const dataDir = await mkdtemp(join(tmpdir(), 'swardwright-club-'))
    let server = await startClubServer(dataDir)
    const faults: string[] = []
    page.on('pageerror', (error) => faults.push(error.message))
    await use({
      address: () => server.address,
      restart: async () => {
        const port = portOf(server)
        await server.stop()
        server = await startClubServer(dataDir, port)
      },
      stop: () => server.stop(),
      kill: () => server.kill(),
    })
    await server.stop()
    await rm(dataDir, { recursive: true, force: true })
    expect(faults).toEqual([])
  },
})

export { expect }

/** Opens a page of the app and waits until it shows. */
export const turnTo = async (page: Page, club: Club, path: string): Promise<void> => {
  await page.goto(`${club.address()}${path}`)
  await expect(page.locator('main > header h1')).toBeVisible()
}

/** Waits until everything recorded has reached the server. */
export const untilSent = async (page: Page): Promise<void> => {
  await expect(page.getByText('All kept and sent').filter({ visible: true }).first()).toBeVisible()
}

/** Waits until the app lies on the device, to be opened without a line. */
export const untilAppKept = async (page: Page): Promise<void> => {
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined))
}

/** Every entry that the server has, by its own pages. */
export const entriesOn = async (club: Club): Promise<readonly { id: string; device: string }[]> => {
  const [course] = (await (await fetch(`${club.address()}/api/courses`)).json()) as { id: string }[]
  const entries: { id: string; device: string }[] = []
  for (let cursor = '0', more = true; more;) {
    const address = `${club.address()}/api/courses/${course?.id}/entries?after=${encodeURIComponent(cursor)}`
    const answer = (await (await fetch(address)).json()) as {
      entries: { id: string; device: string }[]
      cursor: string
      more: boolean
    }
    entries.push(...answer.entries)
    ;({ cursor, more } = answer)
  }
  return entries
}
