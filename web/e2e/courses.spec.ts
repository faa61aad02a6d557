import { expect, test, turnTo, untilSent } from './club.ts'
import { faultsOf } from './readable.ts'

test('a second course is made, has a diary of its own, and both open again', async ({ page, club }, info) => {
  await turnTo(page, club, '/courses')
  await expect(page.locator('main .rows li')).toHaveCount(1)
  await page.getByText('as the demo').click()
  await page.getByLabel('Name of the course').fill('Far Links')
  await page.getByRole('button', { name: 'Make the course' }).click()
  await page.waitForURL(`${club.address()}/`)
  await expect(page.locator('.tabs .club')).toHaveText('Far Links')

  await turnTo(page, club, '/courses')
  await expect(page.locator('main .rows li')).toHaveCount(2)
  await expect(page.locator('main .rows li', { hasText: 'Far Links' })).toContainText('open now')
  expect(await faultsOf(page)).toEqual([])
  await page.setViewportSize({ width: 390, height: 844 })
  await page.screenshot({ path: info.outputPath('courses-390.png'), fullPage: true })
  await page.setViewportSize({ width: 1280, height: 900 })

  await turnTo(page, club, '/green/g01')
  await page.getByLabel('Area', { exact: true }).fill('512')
  await page.getByLabel('Area', { exact: true }).blur()
  await untilSent(page)
  await turnTo(page, club, '/courses')
  await page.getByRole('button', { name: 'Turn to Ossenby Golf Club' }).click()
  await expect(page.locator('.tabs .club')).toHaveText('Ossenby Golf Club')
  await turnTo(page, club, '/green/g01')
  await expect(page.getByLabel('Area', { exact: true })).not.toHaveValue('512')
})

test('without a line a course visited before opens, and what the other has not sent goes once the line is back', async ({
  page,
  club,
}) => {
  await turnTo(page, club, '/courses')
  await page.getByText('as the demo').click()
  await page.getByLabel('Name of the course').fill('Far Links')
  await page.getByRole('button', { name: 'Make the course' }).click()
  await expect(page.locator('.tabs .club')).toHaveText('Far Links')
  await untilSent(page)
  await turnTo(page, club, '/green/g01')
  // The server stays away for the journal, as on a course without signal; the app itself is served.
  await page.route('**/api/**', (route) => route.abort())
  await page.getByLabel('Area', { exact: true }).fill('512')
  await page.getByLabel('Area', { exact: true }).blur()
  await expect(page.getByText('No line.').first()).toBeVisible()
  await turnTo(page, club, '/courses')
  await page.getByRole('button', { name: 'Turn to Ossenby Golf Club' }).click()
  await expect(page.locator('.tabs .club')).toHaveText('Ossenby Golf Club')
  await expect(page.locator('.tabs')).toContainText('Far Links: 1 change not sent yet')

  await page.unroute('**/api/**')
  await page.reload()
  await expect(page.locator('.tabs')).not.toContainText('Far Links')
  const listed = await page.request.get(`${club.address()}/api/courses`)
  const far = ((await listed.json()) as { id: string; name: string }[]).find(
    ({ name }) => name === 'Far Links',
  )
  const entries = await page.request.get(`${club.address()}/api/courses/${far?.id}/entries`)
  expect(await entries.text()).toContain('512')
})

test('a link may name the course, and one that names none of ours says so', async ({ page, club }) => {
  await turnTo(page, club, '/courses')
  await page.getByLabel('Name of the course').fill('Far Links')
  await page.getByRole('button', { name: 'Make the course' }).click()
  await expect(page.getByRole('heading', { name: 'There is no course here yet' })).toBeVisible()
  // The way back is there as well.
  await expect(page.getByRole('button', { name: 'Turn to Ossenby Golf Club' })).toBeVisible()
  const listed = await page.request.get(`${club.address()}/api/courses`)
  const demo = ((await listed.json()) as { id: string; name: string }[]).find(
    ({ name }) => name !== 'Far Links',
  )
  await turnTo(page, club, `/stores?course=${demo?.id}`)
  await expect(page.locator('main > header h1')).toHaveText('Stores')
  await expect(page).toHaveURL(`${club.address()}/stores`)
  await turnTo(page, club, '/stores?course=nowhere')
  await expect(page.getByText('The link names a course that this device does not see')).toBeVisible()
})

test('a crew phone that joined one course sees that one only', async ({ page, club, browser }) => {
  await page.goto(`${club.address()}/account`)
  await page.getByLabel('Name', { exact: true }).fill('Ada Birch')
  await page.getByLabel('Password', { exact: true }).fill('wet hollow front left')
  await page.getByRole('button', { name: 'Make the account' }).click()
  await page.waitForURL(`${club.address()}/`)
  await turnTo(page, club, '/courses')
  await page.getByText('as the demo').click()
  await page.getByLabel('Name of the course').fill('Far Links')
  await page.getByRole('button', { name: 'Make the course' }).click()
  await expect(page.locator('.tabs .club')).toHaveText('Far Links')
  await turnTo(page, club, '/account')
  await page.getByLabel('Name of the person or device').fill('Ben Ash')
  await page.getByRole('button', { name: 'Make a link' }).click()
  const link = await page.getByRole('textbox', { name: 'Copy the link' }).inputValue()

  const device = await browser.newContext({ viewport: { width: 390, height: 844 } })
  const phone = await device.newPage()
  await phone.goto(link)
  await phone.getByRole('button', { name: 'Join with this device' }).click()
  await phone.waitForURL(`${club.address()}/`)
  await turnTo(phone, club, '/courses')
  await expect(phone.locator('main .rows li')).toHaveCount(1)
  await expect(phone.locator('main .rows li')).toContainText('Far Links')
  await expect(phone.getByRole('button', { name: 'Make the course' })).toHaveCount(0)
  const listed = (await (await page.request.get(`${club.address()}/api/courses`)).json()) as {
    id: string
    name: string
  }[]
  const other = listed.find(({ name }) => name !== 'Far Links')
  const answer = await phone.evaluate(
    async (id) => (await fetch(`/api/courses/${id}/entries`)).status,
    other?.id ?? '',
  )
  expect(answer).toBe(404)
  await device.close()
})
