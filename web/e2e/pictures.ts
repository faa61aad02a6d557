import type { Page } from '@playwright/test'

/** A picture of coarse grain, in a JPEG made by the browser itself: large enough for several parts once it is shrunk. */
export const grainOf = async (page: Page, width: number, height: number): Promise<Buffer> => {
  const base64 = await page.evaluate(
    async ([w, h]) => {
      const canvas = document.createElement('canvas')
      canvas.width = w
      canvas.height = h
      const paper = canvas.getContext('2d')
      if (paper === null) return ''
      for (let y = 0; y < h; y += 3)
        for (let x = 0; x < w; x += 3) {
          paper.fillStyle = `rgb(${(x * 7 + y * 13) % 256} ${(x * y) % 256} ${Math.floor(Math.random() * 256)})`
          paper.fillRect(x, y, 3, 3)
        }
      return canvas.toDataURL('image/jpeg', 0.95).split(',')[1] ?? ''
    },
    [width, height] as const,
  )
  return Buffer.from(base64, 'base64')
}
