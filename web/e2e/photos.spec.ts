import { createHash } from 'node:crypto'
import type { Page } from '@playwright/test'
import { expect, test, turnTo, untilSent, type Club } from './club.ts'
import { courseOn, entriesOn } from './journal.ts'
import { grainOf } from './pictures.ts'
import { readsWell } from './readable.ts'

test.use({ serviceWorkers: 'allow', begins: 'settled' })

const PART = 256 * 1024

/**
 * Puts an Exif block behind the head of a JPEG: turned by a quarter (orientation 6, TIFF tag 0x0112), and a place (GPS, tag 0x8825) whose
 * latitude stands as text. After the Exif 2.32 standard, 4.5.2 and 4.6.
 */
const withExif = (jpeg: Buffer): Buffer => {
  const tiff = Buffer.alloc(8 + 2 + 12 * 2 + 4)
  tiff.write('MM')
  tiff.writeUInt16BE(42, 2)
  tiff.writeUInt32BE(8, 4)
  tiff.writeUInt16BE(2, 8)
  const entry = (at: number, tag: number, type: number): void => {
    tiff.writeUInt16BE(tag, at)
    tiff.writeUInt16BE(type, at + 2)
    tiff.writeUInt32BE(1, at + 4)
  }
  entry(10, 0x0112, 3)
  tiff.writeUInt16BE(6, 18)
  entry(22, 0x8825, 4)
  tiff.writeUInt32BE(8 + 2 + 12 * 2 + 4, 30)
  const gps = Buffer.from('GPSLatitude 51.0000')
  const block = Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), tiff, gps])
  const head = Buffer.from([0xff, 0xe1, 0, 0])
  head.writeUInt16BE(block.length + 2, 2)
  return Buffer.concat([jpeg.subarray(0, 2), head, block, jpeg.subarray(2)])
}

const choose = (page: Page, ...pictures: readonly Buffer[]) =>
  page
    .getByLabel('Add photos from this device')
    .setInputFiles(pictures.map((buffer, n) => ({ name: `green-${n}.jpg`, mimeType: 'image/jpeg', buffer })))

const thumbs = (page: Page) => page.locator('.photo-thumb img')

type Told = { readonly kind: string; readonly body: { readonly sha256: string; readonly bytes: number } }

const photosOn = async (club: Club): Promise<readonly Told[]> =>
  (await entriesOn(club.address())).flatMap((entry) =>
    entry.kind === 'photoTaken' ? [entry as unknown as Told] : [],
  )

const fileOn = async (club: Club, sha256: string): Promise<Buffer | null> => {
  const answer = await fetch(
    `${club.address()}/api/courses/${await courseOn(club.address())}/blobs/${sha256}`,
  )
  return answer.ok ? Buffer.from(await answer.arrayBuffer()) : null
}

const hashOf = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex')

/** The file of a photo as the device keeps it. */
const fileHere = async (page: Page, sha256: string): Promise<Buffer> => {
  const bytes = await page.evaluate(
    (name) =>
      new Promise<number[]>((resolve, reject) => {
        const opening = indexedDB.open('swardwright-photos')
        opening.addEventListener('success', () => {
          const all = opening.result.transaction('bytes').objectStore('bytes').openCursor()
          all.addEventListener('success', () => {
            const at = all.result
            if (at === null) return reject(new Error('the photo is not here'))
            if (JSON.stringify(at.key).includes(`"${name}","file"`))
              return resolve([...new Uint8Array(at.value)])
            return at.continue()
          })
        })
      }),
    sha256,
  )
  return Buffer.from(bytes)
}

/** Greatest sizes of the JPEG's frame (ITU-T T.81, B.2.2: SOF0 or SOF2, two bytes of height, two of width). */
const frameOf = (jpeg: Buffer): { readonly width: number; readonly height: number } => {
  const at = [0xc0, 0xc2].map((mark) => jpeg.indexOf(Buffer.from([0xff, mark, 0]))).find((place) => place > 0)
  if (at === undefined) throw new Error('no frame in the JPEG')
  return { height: jpeg.readUInt16BE(at + 5), width: jpeg.readUInt16BE(at + 7) }
}

test('a photo taken without a line is kept over a reload, reaches the server byte for byte, and shows on another device', async ({
  page,
  club,
  browser,
}) => {
  await turnTo(page, club, '/green/g03')
  await untilSent(page)
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined))
  const picture = withExif(await grainOf(page, 2400, 1800))
  await club.stop()

  await choose(page, picture)
  await expect(page.getByText('1 photo kept on this device')).toBeVisible()
  await expect(thumbs(page)).toHaveCount(1)
  await expect(page.getByText(/1 change and 1 photo kept here, not sent yet/u).first()).toBeVisible()
  // The same once more is no second photo.
  await choose(page, picture)
  await expect(page.getByText('That photo is here already.')).toBeVisible()

  await page.reload()
  await expect(thumbs(page)).toHaveCount(1)
  await expect(page.getByText(/1 change and 1 photo kept here, not sent yet/u).first()).toBeVisible()

  await club.restart()
  await untilSent(page)
  const [told] = await photosOn(club)
  const sha256 = told?.body.sha256 ?? ''
  const sent = (await fileOn(club, sha256)) ?? Buffer.alloc(0)
  expect(hashOf(sent)).toBe(sha256)
  expect(sent.length).toBe(told?.body.bytes)
  expect(sent.equals(await fileHere(page, sha256))).toBe(true)
  // Upright, 1600 px on the longer side, and nothing left of the camera's own notes.
  expect(frameOf(sent)).toEqual({ width: 1200, height: 1600 })
  expect(picture.includes('GPSLatitude')).toBe(true)
  expect(sent.includes('GPSLatitude') || sent.includes('Exif')).toBe(false)

  const other = await browser.newContext({ viewport: { width: 390, height: 844 }, serviceWorkers: 'allow' })
  const phone = await other.newPage()
  await phone.goto(`${club.address()}/green/g03`)
  await expect(thumbs(phone)).toHaveCount(1)
  // Once seen it is kept there too.
  await phone.evaluate(() => navigator.serviceWorker.ready.then(() => undefined))
  await club.stop()
  await phone.reload()
  await expect(thumbs(phone)).toHaveCount(1)
  await phone.locator('.photo-thumb').click()
  await expect(phone.locator('.photo-large img')).toBeVisible()
  await other.close()
  await club.restart()
})

test('a line that breaks in the middle costs one part: the photo goes on where the server stopped', async ({
  page,
  club,
}) => {
  await turnTo(page, club, '/green/g03')
  await untilSent(page)
  const ranges: string[] = []
  let cuts = 0
  await page.route('**/blobs/**', async (route) => {
    const range = route.request().headers()['content-range']
    if (route.request().method() !== 'PUT' || range === undefined) return route.continue()
    ranges.push(range)
    // The second part goes, the line breaks before the answer; the server has it, and the phone can't know.
    if (cuts === 0 && range.startsWith(`bytes ${PART}-`)) {
      cuts += 1
      await route.fetch()
      return route.abort()
    }
    return route.continue()
  })
  await choose(page, await grainOf(page, 1600, 1200))
  await expect.poll(() => cuts).toBe(1)
  await expect(page.getByText(/1 photo kept here, not sent yet/u).first()).toBeVisible()
  await untilSent(page)
  const [told] = await photosOn(club)
  const total = told?.body.bytes ?? 0
  expect(total).toBeGreaterThan(3 * PART)
  expect(ranges.slice(0, 5)).toEqual([
    `bytes */${total}`,
    `bytes 0-${PART - 1}/${total}`,
    `bytes ${PART}-${2 * PART - 1}/${total}`,
    `bytes */${total}`,
    `bytes ${2 * PART}-${Math.min(3 * PART, total) - 1}/${total}`,
  ])
  const sent = await fileOn(club, told?.body.sha256 ?? '')
  expect(hashOf(sent ?? Buffer.alloc(0))).toBe(told?.body.sha256)
})

test('a photo that the server will not take stays, says why, and goes when it is tried again', async ({
  page,
  club,
}) => {
  await turnTo(page, club, '/green/g03')
  await untilSent(page)
  await page.route('**/blobs/**', (route) =>
    route.request().method() === 'PUT' ? route.fulfill({ status: 413, body: '{}' }) : route.continue(),
  )
  await choose(page, await grainOf(page, 600, 400))
  await page.getByRole('link', { name: '1 photo needs attention' }).click()
  await expect(page.getByText('It is larger than the server takes.')).toBeVisible()
  await page.unroute('**/blobs/**')
  const saved = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Save as a file' }).click()
  expect((await saved).suggestedFilename()).toMatch(/^photo-[0-9a-f]{8}\.jpg$/u)
  await page.getByRole('button', { name: 'Try all of them again' }).click()
  await expect(page.getByRole('heading', { name: 'Photos the server does not have yet' })).toHaveCount(0)
  const [told] = await photosOn(club)
  expect(hashOf((await fileOn(club, told?.body.sha256 ?? '')) ?? Buffer.alloc(0))).toBe(told?.body.sha256)
})

test('where there is no room the photo is held in the page, and kept once there is', async ({
  page,
  club,
}) => {
  await turnTo(page, club, '/green/g03')
  await untilSent(page)
  await page.evaluate(() => {
    const put: unknown = Reflect.get(IDBObjectStore.prototype, 'put')
    if (typeof put !== 'function') throw new Error('this browser keeps nothing')
    Object.assign(globalThis, { roomAgain: () => Reflect.set(IDBObjectStore.prototype, 'put', put) })
    Reflect.set(IDBObjectStore.prototype, 'put', function full(this: IDBObjectStore, ...args: unknown[]) {
      if (this.name === 'bytes') throw new DOMException('no room', 'QuotaExceededError')
      return Reflect.apply(put, this, args) as unknown
    })
  })
  await choose(page, await grainOf(page, 600, 400))
  await expect(page.getByText(/This device has no room left/u)).toBeVisible()
  await untilSent(page)
  expect(await photosOn(club)).toEqual([])
  const saved = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Save it as a file' }).click()
  await saved
  await page.evaluate(() => Reflect.apply(Reflect.get(globalThis, 'roomAgain'), null, []))
  await page.getByRole('button', { name: 'Try again' }).click()
  await expect(thumbs(page)).toHaveCount(1)
  await untilSent(page)
  expect(await photosOn(club)).toHaveLength(1)
})

test('photos are looked at with keys, get a note, are taken out and put back; readers and thumbs can use it', async ({
  page,
  club,
}) => {
  await page.setViewportSize({ width: 390, height: 844 })
  await turnTo(page, club, '/green/g03')
  await choose(page, await grainOf(page, 600, 400), await grainOf(page, 400, 600))
  await expect(thumbs(page)).toHaveCount(2)
  await expect(page.getByText('not sent yet')).toHaveCount(0)
  await readsWell(page)

  await page.locator('.photo-thumb').first().focus()
  await page.keyboard.press('Enter')
  const large = page.locator('.photo-large img')
  await expect(large).toBeVisible()
  const first = await large.getAttribute('src')
  await page.keyboard.press('ArrowLeft')
  await expect(large).not.toHaveAttribute('src', first ?? '')
  await readsWell(page)
  await page.keyboard.press('ArrowRight')
  await page.getByLabel('Note').fill('sand still shows at the back')
  await page.getByRole('button', { name: 'Keep the note' }).click()
  await expect(large).toHaveAttribute('alt', /sand still shows at the back/u)
  const heights = await page
    .locator('dialog.photo-view button:visible')
    .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().height))
  expect(Math.min(...heights)).toBeGreaterThanOrEqual(44)

  await page.getByRole('button', { name: 'Take this photo out' }).click()
  await page.keyboard.press('Escape')
  await expect(thumbs(page)).toHaveCount(1)
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect(thumbs(page)).toHaveCount(2)
})
