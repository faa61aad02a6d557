import { expect, test } from './club.ts'

const PASSWORD = 'wet hollow front left'

test('the manager makes an account, lets a phone in by a link, sees its work under its name, and revokes it', async ({
  page,
  club,
  browser,
}) => {
  await page.goto(`${club.address()}/account`)
  await page.getByLabel('Name', { exact: true }).fill('Ada Birch')
  await page.getByLabel('Password', { exact: true }).fill(PASSWORD)
  await page.getByRole('button', { name: 'Make the account' }).click()
  await page.waitForURL(`${club.address()}/`)
  await page.goto(`${club.address()}/account`)
  await expect(page.getByText('Ada Birch, manager')).toBeVisible()

  await page.getByLabel('Name of the person or device').fill('Ben Ash')
  await page.getByRole('button', { name: 'Make a link' }).click()
  await expect(page.getByRole('img', { name: 'Let a device in: Ben Ash' })).toBeVisible()
  const link = await page.getByRole('textbox', { name: 'Copy the link' }).inputValue()
  expect(link).toContain('/join#')

  const device = await browser.newContext({ viewport: { width: 390, height: 844 } })
  const phone = await device.newPage()
  await phone.goto(club.address())
  await expect(phone.getByRole('heading', { name: 'Who is this?' })).toBeVisible()
  await phone.goto(link)
  await phone.getByRole('button', { name: 'Join with this device' }).click()
  await phone.waitForURL(`${club.address()}/`)
  await phone.goto(`${club.address()}/account`)
  await expect(phone.getByText('Ben Ash, crew')).toBeVisible()
  await phone.goto(`${club.address()}/more`)
  await expect(phone.getByRole('main').getByText('All kept and sent')).toBeVisible()

  // The link is used up.
  const stranger = await (await browser.newContext()).newPage()
  await stranger.goto(link)
  await stranger.getByRole('button', { name: 'Join with this device' }).click()
  await expect(stranger.getByText('this join link was used')).toBeVisible()
  await stranger.context().close()

  await page.reload()
  await page.getByRole('button', { name: 'Revoke Ben Ash' }).click()
  await expect(page.getByRole('button', { name: 'Revoke Ben Ash' })).toHaveCount(0)
  await phone.reload()
  await expect(phone.getByRole('main').getByText('The server will not answer this device')).toBeVisible()
  await device.close()
})

test('somebody logs in on another machine and out again, and a wrong password says so', async ({
  page,
  club,
  browser,
}) => {
  await page.goto(`${club.address()}/account`)
  await page.getByLabel('Name', { exact: true }).fill('Ada Birch')
  await page.getByLabel('Password', { exact: true }).fill(PASSWORD)
  await page.getByRole('button', { name: 'Make the account' }).click()
  await page.waitForURL(`${club.address()}/`)

  const office = await (await browser.newContext()).newPage()
  await office.goto(club.address())
  await office.getByLabel('Name', { exact: true }).fill('Ada Birch')
  await office.getByLabel('Password', { exact: true }).fill('something else')
  await office.getByRole('button', { name: 'Log in' }).click()
  await expect(office.getByText('name or password is not right')).toBeVisible()
  await office.getByLabel('Password', { exact: true }).fill(PASSWORD)
  await office.getByRole('button', { name: 'Log in' }).click()
  await expect(office.getByRole('navigation', { name: 'Pages' })).toBeVisible()
  await office.goto(`${club.address()}/account`)
  await expect(office.getByText('Ada Birch, manager')).toBeVisible()
  await office.getByRole('button', { name: 'Log out' }).click()
  await office.waitForURL(`${club.address()}/`)
  await office.goto(`${club.address()}/account`)
  await expect(office.getByText('Nobody yet')).toBeVisible()
  await office.context().close()
})
