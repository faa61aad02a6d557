import { fileURLToPath } from 'node:url'
import { chromium, type Browser, type Page } from '@playwright/test'
import { build } from 'vite'
import { CHROMIUM } from '../../web/e2e/chromium.ts'

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url))

/** A file of this folder as one script, which leaves what the file exports in `bench`. */
export const bundled = async (file: string): Promise<string> => {
  const built = await build({
    root: here('.'),
    configFile: false,
    logLevel: 'error',
    resolve: { conditions: ['swardwright-source', 'module', 'browser', 'development|production'] },
    build: {
      write: false,
      target: 'es2023',
      lib: { entry: here(file), formats: ['iife'], name: 'bench' },
    },
  })
  const [output] = Array.isArray(built) ? built : [built]
  const chunk = output !== undefined && 'output' in output ? output.output[0] : undefined
  if (chunk === undefined) throw new Error('the bundler gave no script')
  return chunk.code
}

/** A Chromium of its own, to be closed by the caller. */
export const launched = (): Promise<Browser> => chromium.launch(CHROMIUM)

/** Does some work in a page that has loaded a script, of a browser started for it alone: none of the script's code has run before. */
export const inFreshPage = async <T>(script: string, work: (page: Page) => Promise<T>): Promise<T> => {
  const browser = await launched()
  try {
    const page = await browser.newPage()
    await page.addScriptTag({ content: script })
    return await work(page)
  } finally {
    await browser.close()
  }
}

/** From now on this page's main thread gets only so small a part of the processor: browsers' own stand-in for a slower device. */
export const throttle = async (page: Page, rate: number): Promise<void> => {
  const devtools = await page.context().newCDPSession(page)
  await devtools.send('Emulation.setCPUThrottlingRate', { rate })
}
