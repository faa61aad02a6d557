import type { Browser, Page } from '@playwright/test'
import { fold, initialState, type Entry } from '@swardwright/journal'
import { expect, test, turnTo, untilAppKept, untilSent } from './club.ts'
import { entriesOn } from './journal.ts'

test.use({ serviceWorkers: 'allow', begins: 'settled' })

const area = (page: Page) => page.getByLabel('Area', { exact: true })

/** A phone of its own, with its own store. */
const phone = async (browser: Browser): Promise<Page> =>
  (await browser.newContext({ serviceWorkers: 'allow', viewport: { width: 390, height: 844 } })).newPage()

/** Turns to where a phone says how things stand. */
const openMore = async (page: Page): Promise<void> => {
  await page.locator('nav a[href="/more"]').click()
  await expect(page.getByRole('heading', { name: 'More', exact: true })).toBeVisible()
}

/** How many entries wait, as the app tells it. */
const expectWaiting = async (page: Page, count: number): Promise<void> => {
  await openMore(page)
  await expect(
    page.locator('main').getByText(`No line. ${count} changes kept here, not sent yet`),
  ).toBeVisible()
}

/** Turns to a green by way of the course. */
const openGreen = async (page: Page, green: string): Promise<void> => {
  await page.locator('nav a[href="/course"]').click()
  await page.locator(`main a[href="/green/${green}"]`).first().click()
  await expect(area(page)).toBeVisible()
}

/** Types areas into one green, one after the other, without waiting for the page: each counts, as the field is left after it. */
const typeAreas = async (page: Page, areasM2: readonly number[]): Promise<void> => {
  for (const m2 of areasM2) {
    await area(page).fill(String(m2))
    await area(page).blur()
  }
  await expect(area(page)).toHaveValue(String(areasM2.at(-1)))
}

/** Ticks a box so many times, as fast as the page shows each. */
const tickTimes = (page: Page, label: string, times: number): Promise<void> =>
  page.evaluate(
    async ([words, count]) => {
      const waiting = (): number =>
        Number(/(\d+) changes? kept here/u.exec(document.body.textContent)?.[1] ?? 0)
      const ticks = [...document.querySelectorAll('label.tick')]
      const box = ticks.find((one) => one.textContent.includes(words))?.querySelector('input')
      if (box === null || box === undefined) throw new Error(`no box to tick for ‘${words}’`)
      for (let n = 0; n < count; n += 1) {
        const before = waiting()
        box.click()
        while (waiting() <= before) await new Promise((resolve) => setTimeout(resolve, 2))
      }
    },
    [label, times] as const,
  )

/** Everything that lies in this phone’s own store, in the order of the store. */
const keptOn = (page: Page): Promise<readonly Entry[]> =>
  page.evaluate(
    () =>
      new Promise<Entry[]>((resolve, reject) => {
        const opening = indexedDB.open('swardwright')
        opening.addEventListener('error', () => reject(opening.error ?? new Error('no store')))
        opening.addEventListener('success', () => {
          const all = opening.result.transaction('entries').objectStore('entries').getAll()
          all.addEventListener('error', () => reject(all.error ?? new Error('nothing read')))
          all.addEventListener('success', () => {
            opening.result.close()
            resolve(all.result as Entry[])
          })
        })
      }),
  )

/** What stands in the fields of a green. */
const fieldsOf = async (page: Page, green: string): Promise<readonly string[]> => {
  await openGreen(page, green)
  return page
    .locator('main input, main select')
    .evaluateAll((all) =>
      all.map((one) =>
        one instanceof HTMLInputElement && ['checkbox', 'radio'].includes(one.type)
          ? String(one.checked)
          : (one as HTMLInputElement | HTMLSelectElement).value,
      ),
    )
}

test('200 entries made without a line on two phones, each started anew meanwhile, come to one state, each once', async ({
  club,
  browser,
}) => {
  test.slow()
  const [a, b] = [await phone(browser), await phone(browser)]
  for (const [one, green] of [
    [a, 'g03'],
    [b, 'g04'],
  ] as const) {
    await turnTo(one, club, `/green/${green}`)
    await untilAppKept(one)
    await openMore(one)
    await untilSent(one)
  }
  const before = await entriesOn(club.address())
  await club.stop()

  const work = async (one: Page, own: string, areasM2: readonly number[], sharedM2: number) => {
    await openGreen(one, own)
    await typeAreas(one, areasM2)
    await tickTimes(one, 'Weak', 49 - areasM2.length)
    // Both set the same field of this green: the later counts.
    await openGreen(one, 'g07')
    await typeAreas(one, [sharedM2])
    await expectWaiting(one, 50)
    // The phone is started anew, with the app from its own store.
    await one.reload()
    await expectWaiting(one, 50)
    await openGreen(one, own)
    await expect(area(one)).toHaveValue(String(areasM2.at(-1)))
    await tickTimes(one, 'Weak', 50)
    await expectWaiting(one, 100)
  }
  await work(a, 'g03', [301, 302, 303, 304, 305, 306, 307, 308, 309, 310], 455)
  await work(b, 'g04', [501, 502, 503, 504, 505, 506, 507, 508, 509, 510], 466)

  await club.restart()
  await Promise.all([untilSent(a), untilSent(b)])
  const after = await entriesOn(club.address())
  const ids = after.map(({ id }) => id)
  expect(ids.length - before.length).toBe(200)
  expect(new Set(ids).size).toBe(ids.length)
  const made = after.filter(({ id }) => before.every((one) => one.id !== id))
  const perDevice = new Map<string, number>()
  for (const { device } of made) perDevice.set(device, (perDevice.get(device) ?? 0) + 1)
  expect([...perDevice.values()]).toEqual([100, 100])

  const fresh = await phone(browser)
  await turnTo(fresh, club, '/more')
  await untilSent(fresh)
  const phones = [a, b, fresh]
  for (const one of phones)
    await expect.poll(async () => (await keptOn(one)).map(({ id }) => id).sort()).toEqual(ids.toSorted())
  const [told, ...others] = await Promise.all(
    phones.map(async (one) => fold(initialState, await keptOn(one)).facts),
  )
  for (const other of others) expect(other).toEqual(told)
  for (const [green, m2] of [
    ['g03', '310'],
    ['g04', '510'],
    ['g07', '466'],
  ] as const) {
    const shown = await Promise.all(phones.map((one) => fieldsOf(one, green)))
    expect(shown[0]).toContain(m2)
    expect(shown[1]).toEqual(shown[0])
    expect(shown[2]).toEqual(shown[0])
  }
  await Promise.all(phones.map((one) => one.context().close()))
})
