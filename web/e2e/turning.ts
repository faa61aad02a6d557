import type { Page } from '@playwright/test'
import { expect } from './club.ts'

/** Says that a page's code did not come. */
export const NOT_COME = 'This page has not come yet'

/** Turns by a link, as a person does, without loading the app anew; resolves when the page before has gone. */
export const turnBy = async (page: Page, path: string): Promise<void> => {
  await page.evaluate((href) => {
    document.querySelector('main')?.setAttribute('data-before', '')
    const link = document.createElement('a')
    link.href = href
    document.body.append(link)
    link.click()
    link.remove()
  }, path)
  await expect(page.locator('main[data-before]')).toHaveCount(0)
  await expect(page.locator('main > header h1')).toBeVisible()
}
