import type { Page } from '@playwright/test'
import { expect, test, turnTo, untilPlanned, untilSent, type Club } from './club.ts'
import { startNextBuild } from './next-build.ts'
import { PAGES } from './pages.ts'
import { NOT_COME, turnBy } from './turning.ts'

/** Every page of the app but the first. */
const SCREENS = PAGES.filter((path) => path !== '/')

test.describe('with the app kept on the device', () => {
  test.use({ serviceWorkers: 'allow' })

  const untilKept = async (page: Page): Promise<void> => {
    await page.waitForFunction(() =>
      navigator.serviceWorker.ready.then((one) => one.active?.state === 'activated'),
    )
  }

  const opensEvery = async (page: Page): Promise<void> => {
    for (const path of SCREENS) {
      await turnBy(page, path)
      await expect(page.getByRole('heading', { name: NOT_COME })).toHaveCount(0)
    }
  }

  const worksEverythingOut = async (page: Page, club: Club): Promise<void> => {
    await page.goto(`${club.address()}/plan`)
    await untilPlanned(page)
    await page.getByText('If the sky is not as forecast').click()
    await expect(page.getByText(/the chance that one is caught is/u).first()).toBeVisible({
      timeout: 120_000,
    })
    await page.goto(`${club.address()}/green/g07/runs`)
    await expect(page.getByText('Laying out the runs')).toHaveCount(0)
    await expect(page.locator('main svg').first()).toBeVisible()
    await page.goto(`${club.address()}/weather/history`)
    await expect(page.locator('main svg').first()).toBeVisible()
    await page.goto(`${club.address()}/green/g07`)
    await page.locator('main button.figure-from').first().click()
    await expect(page.getByRole('dialog').getByRole('heading', { level: 2 })).toBeVisible()
    await page.getByRole('dialog').getByRole('button', { name: 'Close' }).click()
  }

  test('after one visit every page opens and everything is worked out with the server gone', async ({
    page,
    club,
  }) => {
    test.setTimeout(300_000)
    await turnTo(page, club, '/')
    await untilSent(page)
    await untilKept(page)
    await club.stop()
    // First on the page as it stands, which was opened before anything was kept; then on one opened without a line.
    await opensEvery(page)
    await page.goto(`${club.address()}/`)
    await expect(page.locator('main > header h1')).toBeVisible()
    await opensEvery(page)
    await worksEverythingOut(page, club)
    await expect(page.getByText('A part of the app could not be fetched')).toHaveCount(0)
    await club.restart()
  })

  test('a page of the old version opens pages it never had open, after another took the new version over', async ({
    page,
    club,
  }) => {
    test.setTimeout(240_000)
    const builds = await startNextBuild(club.address())
    await page.goto(`${builds.address}/`)
    await expect(page.locator('main > header h1')).toBeVisible()
    await untilKept(page)
    builds.update()
    const second = await page.context().newPage()
    await second.goto(`${builds.address}/`)
    // On the machine that serves, a page asks the server first: it is of the new version, which then takes over.
    await second.waitForFunction(() => document.querySelector('script[src*=".next."]') !== null)
    await expect(page.getByText('A new version is ready')).toBeVisible()
    await opensEvery(page)
    expect(await page.locator('script[src*=".next."]').count()).toBe(0)
    await opensEvery(second)
    await builds.stop()
  })

  test('a browser finds nothing that keeps the app from being installed', async ({ page, club }) => {
    await turnTo(page, club, '/')
    await untilKept(page)
    await page.reload()
    const devtools = await page.context().newCDPSession(page)
    const { errors, data } = await devtools.send('Page.getAppManifest')
    expect(errors).toEqual([])
    const manifest = JSON.parse(data ?? '{}') as {
      readonly name: string
      readonly short_name: string
      readonly start_url: string
      readonly display: string
      readonly icons: readonly { readonly src: string; readonly sizes: string; readonly purpose?: string }[]
    }
    expect(manifest).toMatchObject({ start_url: '/', display: 'standalone' })
    expect([manifest.name, manifest.short_name].every((name) => name.length > 0)).toBe(true)
    expect(manifest.icons.map(({ sizes, purpose }) => `${sizes} ${purpose ?? 'any'}`)).toEqual(
      expect.arrayContaining(['192x192 any', '512x512 any', '512x512 maskable']),
    )
    for (const { src, sizes } of manifest.icons.filter((icon) => icon.src.endsWith('.png'))) {
      const size = await page.evaluate(async (address) => {
        const picture = await createImageBitmap(await (await fetch(address)).blob())
        return `${picture.width}x${picture.height}`
      }, src)
      expect(`${src} ${size}`).toBe(`${src} ${sizes}`)
    }
    const served = await page.request.get(`${club.address()}/app.webmanifest`)
    expect(served.headers()['content-type']).toContain('application/manifest+json')
    const { installabilityErrors } = await devtools.send('Page.getInstallabilityErrors')
    // Every page of a test stands in a private window, in which nothing can be installed.
    expect(installabilityErrors.filter(({ errorId }) => errorId !== 'in-incognito')).toEqual([])
    // The address that an installed app starts with is answered by the kept app.
    expect(await page.evaluate(() => navigator.serviceWorker.controller?.scriptURL)).toBe(
      `${club.address()}/sw.js`,
    )
    await club.stop()
    await page.goto(`${club.address()}${manifest.start_url}`)
    await expect(page.locator('main > header h1')).toBeVisible()
    await club.restart()
  })
})
