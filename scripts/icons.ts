/**
 * Draws the app's icons from one drawing and writes them to web/public/icons: `node --conditions=swardwright-source --import tsx
 * scripts/icons.ts`. Run it again after changing the drawing.
 */
import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { chromium } from '@playwright/test'
import { CHROMIUM } from '../web/e2e/chromium.ts'

const folder = join(import.meta.dirname, '../web/public/icons')

/** A core taken from a green: turf, the soil under it, and two holes filled with sand. On a field of 32 x 32. */
const DRAWING = `
  <path d="M2 12h28v16H2z" fill="#4a382a"/>
  <path d="M8 12h5v12H8zM20 12h5v12h-5z" fill="#d8b878" stroke="#17211b" stroke-width="1.5"/>
  <path d="M4 11l1-6M9 11l-1-7M14 11l1-6M19 11l-1-7M24 11l1-6M28 11l-1-5" stroke="#2c6a3f" stroke-width="2"/>
  <path d="M2 11h28" stroke="#17211b" stroke-width="2.5"/>`

/** `scale` leaves a margin: launchers cut a maskable icon to any shape, and only a circle of 80 % across is safe. */
const svg = (scale: number): string => {
  const shift = (16 * (1 - scale)).toFixed(2)
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 32 32"><rect width="32" height="32" fill="#f7f4ec"/><g transform="translate(${shift} ${shift}) scale(${scale})">${DRAWING}</g></svg>`
}

const ICONS = [
  { name: 'icon-192', sizePx: 192, scale: 0.9 },
  { name: 'icon-512', sizePx: 512, scale: 0.9 },
  { name: 'maskable-512', sizePx: 512, scale: 0.62 },
  // What a phone of the kind that reads no manifest puts on its home screen.
  { name: 'apple-180', sizePx: 180, scale: 0.8 },
] as const

const browser = await chromium.launch(CHROMIUM)
const page = await browser.newPage()
mkdirSync(folder, { recursive: true })
for (const { name, sizePx, scale } of ICONS) {
  await page.setViewportSize({ width: sizePx, height: sizePx })
  await page.setContent(`<style>body{margin:0}svg{display:block;width:${sizePx}px}</style>${svg(scale)}`)
  writeFileSync(join(folder, `${name}.png`), await page.screenshot({ type: 'png' }))
}
await browser.close()
