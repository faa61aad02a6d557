import type { Page } from '@playwright/test'
import { expect, test, turnTo, untilAppKept, untilSent, type Club } from './club.ts'
import { entriesOn } from './journal.ts'
import { startNextBuild } from './next-build.ts'

test.use({ serviceWorkers: 'allow', begins: 'settled' })

const area = (page: Page) => page.getByLabel('Area', { exact: true })

const setArea = async (page: Page, m2: number): Promise<void> => {
  await area(page).fill(String(m2))
  await area(page).blur()
}

/** Sets the area `times` times, one after the other as quick as a hand can; each counts. */
const setAreas = async (page: Page, from: number, times: number): Promise<void> => {
  for (let n = 1; n <= times; n += 1) await setArea(page, from + n)
  await expect(page.getByText(new RegExp(`\\b${times} changes kept here`, 'u'))).toBeVisible()
}

/** The ids of every entry that the server has. */
const idsOn = async (club: Club): Promise<readonly string[]> =>
  (await entriesOn(club.address())).map(({ id }) => id)

test('with the server gone the app opens, works figures out, records, and sends later', async ({
  page,
  club,
}) => {
  await turnTo(page, club, '/green/g03')
  await untilSent(page)
  await untilAppKept(page)
  await club.stop()

  await page.goto(`${club.address()}/prescription`)
  await expect(page.locator('main > header h1')).toBeVisible()
  await expect(page.getByText(/No line/u).first()).toBeVisible()
  // Opened shares are worked out by the engine in its worker.
  await expect(page.locator('main').getByText(/\d %/u).first()).toBeVisible()
  await page.goto(`${club.address()}/green/g03`)
  await setArea(page, 444)
  await expect(page.getByText(/1 change kept here, not sent yet/u).first()).toBeVisible()
  await page.reload()
  await expect(area(page)).toHaveValue('444')

  await club.restart()
  await untilSent(page)
})

test('two pages of one browser show each other’s entries without the server', async ({ page, club }) => {
  await turnTo(page, club, '/green/g03')
  await untilSent(page)
  const second = await page.context().newPage()
  await turnTo(second, club, '/green/g03')
  const before = (await idsOn(club)).length
  await club.stop()
  await setArea(second, 461)
  await expect(area(page)).toHaveValue('461')
  await setArea(page, 462)
  await expect(area(second)).toHaveValue('462')
  for (const one of [page, second])
    await expect(one.getByText(/2 changes kept here, not sent yet/u).first()).toBeVisible()

  await club.restart()
  await Promise.all([untilSent(page), untilSent(second)])
  expect((await idsOn(club)).length - before).toBe(2)

  // The page that sent goes; the other takes over.
  await page.close()
  await setArea(second, 463)
  await untilSent(second)
  expect((await idsOn(club)).length - before).toBe(3)
})

test('a server killed in the middle of a push loses and doubles nothing', async ({ page, club }) => {
  await turnTo(page, club, '/green/g03')
  await untilSent(page)
  const before = (await idsOn(club)).length
  await club.stop()
  await setAreas(page, 300, 20)
  // The answer is cut off after the server has kept the entries: the phone can't know, and sends them again.
  let up: Promise<void> | null = null
  const start = (): Promise<void> => (up ??= club.restart())
  let tell: (status: number) => void = () => undefined
  const killed = new Promise<number>((resolve) => {
    tell = resolve
  })
  let isCut = false
  await page.route('**/entries', async (route) => {
    if (route.request().method() !== 'POST' || isCut) return route.continue()
    isCut = true
    // The page tries by itself, perhaps before the server is back.
    await start()
    const answer = await route.fetch()
    await club.kill()
    await route.abort()
    tell(answer.status())
  })
  await start()
  expect(await killed).toBe(200)
  // Only now, else the server would be stopped while it still answers.
  await club.restart()
  await untilSent(page)
  const ids = await idsOn(club)
  expect(ids.length - before).toBe(20)
  expect(new Set(ids).size).toBe(ids.length)
})

test('a new version waits until it is asked for, and what is half typed stays', async ({ page, club }) => {
  const builds = await startNextBuild(club.address())
  await page.goto(`${builds.address}/green/g03`)
  await expect(area(page)).toBeVisible()
  await untilAppKept(page)
  await area(page).fill('about 450')
  builds.update()
  await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')))
  await expect(page.getByText('A new version is ready')).toBeVisible()
  await expect(area(page)).toHaveValue('about 450')

  await page.getByRole('button', { name: 'Take it now' }).click()
  await page.waitForFunction(() => document.querySelector('script[src*=".next."]') !== null)
  await expect(area(page)).toHaveValue('about 450')
  await expect(page.getByText('A new version is ready')).toHaveCount(0)
  await builds.stop()
})
