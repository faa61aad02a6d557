import { cp, mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test as base, type Browser, type Page } from '@playwright/test'
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

const dataFolder = (): Promise<string> => mkdtemp(join(tmpdir(), 'swardwright-club-'))

/** Settles the demo's first plan in a new data folder, as its manager does. */
const settleIn = async (dataDir: string, browser: Browser): Promise<void> => {
  const server = await startClubServer(dataDir)
  // At a desk, whatever the test that asks first shows: on a phone the plan's page does not say what is sent.
  const page = await browser.newPage({ serviceWorkers: 'block', viewport: { width: 1280, height: 900 } })
  await page.goto(`${server.address}/plan`)
  await untilPlanned(page)
  await page.getByRole('button', { name: 'Settle this plan' }).click()
  await untilSent(page)
  await page.context().close()
  await server.stop()
}

/** How a club stands when a test begins: as on its first day, or with the plan settled that its first page made. */
type Begins = { readonly begins: 'new' | 'settled' }

/** The data folder of a club with a settled plan, filled when it is first asked for. It is to be copied. */
type Settled = { readonly settledData: () => Promise<string> }

/** Tests with a club; a fault of the page fails the test. */
export const test = base.extend<{ club: Club } & Begins, Settled>({
  begins: ['new', { option: true }],
  settledData: [
    async ({ browser }, use) => {
      const dataDir = await dataFolder()
      let filled: Promise<void> | null = null
      await use(async () => {
        await (filled ??= settleIn(dataDir, browser))
        return dataDir
      })
      await rm(dataDir, { recursive: true, force: true })
    },
    { scope: 'worker' },
  ],
  club: async ({ page, begins, settledData }, use) => {
    const dataDir = await dataFolder()
    if (begins === 'settled') await cp(await settledData(), dataDir, { recursive: true })
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

/** Waits until the plan that shows is made, or opened, and the checker accepts it. */
export const untilPlanned = async (page: Page): Promise<void> => {
  await expect(page.getByText('The checker finds nothing wrong')).toBeVisible({ timeout: 90_000 })
}

/** Waits until everything recorded has reached the server. */
export const untilSent = async (page: Page): Promise<void> => {
  await expect(page.getByText('All kept and sent').filter({ visible: true }).first()).toBeVisible()
}

/** Waits until the app lies on the device, to be opened without a line. */
export const untilAppKept = async (page: Page): Promise<void> => {
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined))
}
