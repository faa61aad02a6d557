import type { Request } from '@playwright/test'
import { expect, test, turnTo } from './club.ts'
import { startNextBuild } from './next-build.ts'
import { NOT_COME, turnBy } from './turning.ts'

/** What a first visit may fetch of the app, bytes over the wire with their headers. */
const MOST_BYTES = 300_000

const isOfTheApp = (request: Request): boolean => !new URL(request.url()).pathname.startsWith('/api/')

test.describe('without a kept app', () => {
  test('a first visit fetches less than 300 kB of the app over the wire until its day is worked out', async ({
    page,
    club,
  }) => {
    // What is fetched ahead, once the page is there, is not of the first load. (A route would turn the browser's own cache off.)
    const devtools = await page.context().newCDPSession(page)
    await devtools.send('Network.enable')
    await devtools.send('Network.setBlockedURLs', { urls: ['*app-files.json'] })
    const finished: Request[] = []
    page.on('requestfinished', (request) => finished.push(request))
    await turnTo(page, club, '/')
    await page.waitForLoadState('networkidle')
    // The plan's first draft is made and checked, so all that the opening page asks of the engine has come.
    await expect.poll(() => finished.some((request) => request.url().includes('/planning-'))).toBe(true)
    await page.waitForLoadState('networkidle')
    const parts = await Promise.all(
      finished.filter(isOfTheApp).map(async (request) => {
        const { responseBodySize, responseHeadersSize } = await request.sizes()
        return { path: new URL(request.url()).pathname, bytes: responseBodySize + responseHeadersSize }
      }),
    )
    const total = parts.reduce((sum, { bytes }) => sum + bytes, 0)
    console.log(
      [...parts, { path: 'together', bytes: total }].map((one) => `${one.bytes} ${one.path}`).join('\n'),
    )
    expect(parts.map(({ path }) => path.replace(/-[\w-]{8}\./u, '.'))).toEqual(
      expect.arrayContaining(['/', '/assets/index.js', '/assets/worker.js', '/assets/planning.js']),
    )
    expect(total).toBeLessThan(MOST_BYTES)
  })

  test('a page whose code is gone from the server says so, and comes once it is asked for again', async ({
    page,
    club,
  }) => {
    const builds = await startNextBuild(club.address())
    await page.goto(`${builds.address}/`)
    await expect(page.locator('main > header h1')).toBeVisible()
    builds.update()
    await turnBy(page, '/stores')
    await expect(page.getByRole('heading', { name: NOT_COME })).toBeFocused()
    await expect(page).toHaveTitle(`${NOT_COME} · Swardwright`)
    await page.getByRole('main').getByRole('button', { name: 'Try again' }).click()
    await expect(page.getByRole('heading', { name: 'Stores', level: 1 })).toBeVisible()
    expect(await page.locator('script[src*=".next."]').count()).toBe(1)
    await builds.stop()
  })

  test('a page left open turns to pages it never had open when the line goes', async ({ page, club }) => {
    const finished: string[] = []
    page.on('requestfinished', (request) => finished.push(request.url()))
    await turnTo(page, club, '/')
    await expect.poll(() => finished.some((url) => /WeatherPage-/u.test(url)), { timeout: 60_000 }).toBe(true)
    await page.waitForLoadState('networkidle')
    await club.stop()
    for (const path of ['/stores', '/people', '/weather']) {
      await turnBy(page, path)
      await expect(page.getByRole('heading', { name: NOT_COME })).toHaveCount(0)
    }
    await club.restart()
  })

  test('a page whose code does not come for want of a line comes when the line is back', async ({
    page,
    club,
  }) => {
    // What the browser fetched ahead would hide it.
    await page.route('**/app-files.json', (route) => route.abort())
    await turnTo(page, club, '/')
    await page.waitForLoadState('networkidle')
    await club.stop()
    await turnBy(page, '/people')
    await expect(page.getByRole('heading', { name: NOT_COME })).toBeVisible()
    await page.getByRole('main').getByRole('button', { name: 'Try again' }).click()
    await expect(page.getByText('The server still does not answer')).toBeVisible()
    await club.restart()
    await page.getByRole('main').getByRole('button', { name: 'Try again' }).click()
    await expect(page.getByRole('heading', { name: 'People', level: 1 })).toBeVisible()
  })
})
