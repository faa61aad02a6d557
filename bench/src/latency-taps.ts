import type { Page } from '@playwright/test'

/** One thing a person does with a finger or a key, and how the page is made ready for it. */
export type Tap = {
  readonly name: string
  /** The page it is done on. */
  readonly path: string
  /** Waits until the page is ready for it, and undoes the time before; not measured. */
  readonly ready: (page: Page, round: number) => Promise<void>
  readonly act: (page: Page, round: number) => Promise<void>
}

/** Long enough for all that follows from what was taken back. */
const TAKEN_BACK_MS = 1_000

const nothing = async (): Promise<void> => undefined

const shows = (page: Page, selector: string): Promise<void> =>
  page.locator(selector).first().waitFor({ state: 'visible', timeout: 120_000 })

/** Presses the middle of what shows, as a finger does: no waiting and no scrolling comes between. */
const press = async (page: Page, selector: string): Promise<void> => {
  const box = await page.locator(selector).first().boundingBox()
  if (box === null) throw new Error(`${selector} does not show`)
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2)
  await page.mouse.down()
  await page.mouse.up()
}

const tab = (name: string, from: string, link: string, heading: RegExp): Tap => ({
  name,
  path: from,
  ready: async (page) => {
    if (new URL(page.url()).pathname !== from) await press(page, `nav.tabs a[href="${from}"]`)
    await page.waitForURL(`**${from}`)
    await page.locator('main > header h1').waitFor()
  },
  act: async (page) => {
    await press(page, `nav.tabs a[href="${link}"]`)
    await page.locator('main > header h1', { hasText: heading }).waitFor()
  },
})

const field = 'main input[inputmode="decimal"], main input[inputmode="numeric"]'

/** Taking back is work of its own: the next press waits until it is over, as a person does. */
const takeBack = async (page: Page): Promise<void> => {
  const undo = page.getByRole('button', { name: 'Undo' })
  if ((await undo.count()) === 0) return
  await undo.first().click()
  await undo.first().waitFor({ state: 'detached' })
  await page.waitForTimeout(TAKEN_BACK_MS)
}

const closeDialog = async (page: Page): Promise<void> => {
  if ((await page.locator('dialog[open]').count()) > 0) await page.keyboard.press('Escape')
  await page.locator('dialog[open]').first().waitFor({ state: 'hidden' })
}

/** What a person presses most, page by page. */
export const TAPS: readonly Tap[] = [
  {
    name: 'crew: done with a green',
    path: '/crew',
    ready: async (page) => {
      await shows(page, '.thumb button.primary')
      await takeBack(page)
    },
    act: (page) => press(page, '.thumb button.primary'),
  },
  {
    name: 'crew: a problem',
    path: '/crew',
    ready: closeDialog,
    act: (page) => press(page, '.thumb button:not(.primary)'),
  },
  {
    name: 'day board: finished',
    path: '/',
    ready: async (page) => {
      await shows(page, '.thumb button.primary')
      await takeBack(page)
    },
    act: (page) => press(page, '.thumb button.primary'),
  },
  {
    name: 'day board: rain now',
    path: '/',
    ready: (page) => shows(page, '.three button'),
    act: (page) => press(page, '.three button'),
  },
  tab('tab: course', '/', '/course', /Course|greens/iu),
  tab('tab: prescription', '/', '/prescription', /Prescription/iu),
  tab('tab: plan', '/', '/plan', /./u),
  tab('tab: now', '/course', '/', /./u),
  {
    name: 'type a figure',
    path: '/green/g03',
    ready: async (page) => {
      await shows(page, field)
      await page.locator(field).first().focus()
    },
    act: (page, round) => page.keyboard.press(String(round % 10)),
  },
  {
    name: 'paper sheet: type a time',
    path: '/paper',
    ready: async (page) => {
      await shows(page, '.paper-line input')
      await page.locator('.paper-line input').first().focus()
    },
    act: (page, round) => page.keyboard.press(String(round % 10)),
  },
  {
    name: 'plan board: drag a task',
    path: '/plan',
    ready: async (page) => {
      await shows(page, '[data-part=task]')
      await page.locator('[data-part=task]').first().scrollIntoViewIfNeeded()
    },
    act: async (page) => {
      const box = await page.locator('[data-part=task]').first().boundingBox()
      if (box === null) throw new Error('the board shows no task')
      await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2)
      await page.mouse.down()
      for (let step = 1; step <= 5; step += 1) await page.mouse.move(box.x + box.width / 2 + step, box.y)
      // Let go within a press's reach, so that the plan itself stays as it is.
      await page.mouse.up()
    },
  },
  {
    name: 'plan board: press a task',
    path: '/plan',
    ready: nothing,
    act: (page) => press(page, '[data-part=task]'),
  },
]
