import { fileURLToPath } from 'node:url'
import { chromium } from '@playwright/test'
import { build } from 'vite'
import type { GroundFigures } from './ground-work.ts'

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url))

/** The bench as one script that leaves its figures in `groundBench`. */
const bundled = async (): Promise<string> => {
  const built = await build({
    root: here('.'),
    configFile: false,
    logLevel: 'error',
    resolve: { conditions: ['swardwright-source', 'module', 'browser', 'development|production'] },
    build: {
      write: false,
      target: 'es2023',
      lib: { entry: here('ground-page.ts'), formats: ['iife'], name: 'groundBench' },
    },
  })
  const [output] = Array.isArray(built) ? built : [built]
  const chunk = output !== undefined && 'output' in output ? output.output[0] : undefined
  if (chunk === undefined) throw new Error('the bundler gave no script')
  return chunk.code
}

/** Runs the bench in a page of Chromium and hands back what it measured there. The browser is `CHROMIUM_PATH`, else /usr/bin/chromium. */
export const measureInBrowser = async (): Promise<GroundFigures> => {
  const script = await bundled()
  const browser = await chromium.launch({
    executablePath: process.env['CHROMIUM_PATH'] ?? '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu', '--disable-dev-shm-usage'],
  })
  try {
    const page = await browser.newPage()
    return await page.evaluate<GroundFigures>(`(() => { ${script}\nreturn groundBench.figures })()`)
  } finally {
    await browser.close()
  }
}
