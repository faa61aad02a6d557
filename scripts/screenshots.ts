/**
 * Makes the pictures of the README, and with `--all FOLDER` every page at desk and phone size, by day and by night, and as printed.
 * Needs the built app (`npm run build`) and a chromium (CHROMIUM_PATH, else /usr/bin/chromium).
 */
import { mkdir, mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { chromium, type Browser, type Page } from '@playwright/test'
import { CHROMIUM } from '../web/e2e/chromium.ts'
import { startClubServer } from '../web/e2e/server.ts'

const PICTURES = join(import.meta.dirname, '../docs/pictures')

const PAGES = {
  now: '/',
  course: '/course',
  green: '/green/g01',
  runs: '/green/g07/runs',
  outline: '/green/g07/outline',
  prescription: '/prescription',
  plan: '/plan',
  weather: '/weather',
  history: '/weather/history',
  sheets: '/sheets',
  stores: '/stores',
  fixtures: '/fixtures',
  people: '/people',
  machines: '/machines',
  settings: '/settings',
  more: '/more',
} as const

const DESK = { width: 1280, height: 900 }
const PHONE = { width: 390, height: 844 }

/** Opens the app and waits until it has planned, so that every page has something to show. */
const openPlanned = async (
  browser: Browser,
  address: string,
  look: { readonly viewport: typeof DESK; readonly colorScheme: 'light' | 'dark' },
): Promise<Page> => {
  const page = await browser.newPage({ ...look, deviceScaleFactor: 2 })
  await page.goto(`${address}/plan`)
  await page.getByText('The checker finds nothing wrong').waitFor({ timeout: 120_000 })
  return page
}

const turnTo = async (page: Page, address: string, path: string): Promise<void> => {
  await page.goto(`${address}${path}`)
  await page.locator('main > header h1').waitFor()
  await page.getByText('Working it out').waitFor({ state: 'detached' })
  await page.getByText('Laying out the runs').waitFor({ state: 'detached' })
  await page.evaluate(() => document.fonts.ready)
}

const forReadme = async (browser: Browser, address: string): Promise<void> => {
  await mkdir(PICTURES, { recursive: true })
  const desk = await openPlanned(browser, address, { viewport: DESK, colorScheme: 'light' })
  await turnTo(desk, address, PAGES.green)
  await desk.screenshot({ path: join(PICTURES, 'green.png') })
  const phone = await openPlanned(browser, address, { viewport: PHONE, colorScheme: 'light' })
  await turnTo(phone, address, PAGES.now)
  await phone.screenshot({ path: join(PICTURES, 'now.png') })
}

const everything = async (browser: Browser, address: string, folder: string): Promise<void> => {
  await mkdir(folder, { recursive: true })
  for (const [name, viewport] of [
    ['desk', DESK],
    ['phone', PHONE],
  ] as const)
    for (const colorScheme of ['light', 'dark'] as const) {
      const page = await openPlanned(browser, address, { viewport, colorScheme })
      for (const [title, path] of Object.entries(PAGES)) {
        await turnTo(page, address, path)
        await page.screenshot({ path: join(folder, `${name}-${colorScheme}-${title}.png`), fullPage: true })
      }
      if (name === 'desk' && colorScheme === 'light')
        for (const title of ['sheets', 'plan'] as const) {
          await turnTo(page, address, PAGES[title])
          await page.pdf({ path: join(folder, `print-${title}.pdf`), preferCSSPageSize: true })
        }
      await page.close()
    }
}

const at = process.argv.indexOf('--all')
const folder = at === -1 ? undefined : process.argv[at + 1]
const dataDir = await mkdtemp(join(tmpdir(), 'swardwright-pictures-'))
const server = await startClubServer(dataDir)
const browser = await chromium.launch(CHROMIUM)
try {
  await forReadme(browser, server.address)
  if (folder !== undefined) await everything(browser, server.address, folder)
} finally {
  await browser.close()
  await server.stop()
  await rm(dataDir, { recursive: true, force: true })
}
