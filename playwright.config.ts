import { defineConfig } from '@playwright/test'
import { CHROMIUM } from './web/e2e/chromium.ts'

/** Browser tests: each starts the built server itself, on a free port with a fresh data folder. */
export default defineConfig({
  testDir: 'web/e2e',
  timeout: 120_000,
  expect: { timeout: 30_000 },
  workers: 2,
  fullyParallel: true,
  forbidOnly: true,
  // A loaded machine can starve a browser; one more try tells that from a fault.
  retries: 1,
  reporter: [['list']],
  outputDir: 'test-results/browser',
  use: {
    browserName: 'chromium',
    // A page kept by an earlier test would hide what the server says; tests of use without a line let it in.
    serviceWorkers: 'block',
    viewport: { width: 1280, height: 900 },
    locale: 'en-GB',
    timezoneId: 'Europe/London',
    colorScheme: 'light',
    trace: 'retain-on-failure',
    launchOptions: CHROMIUM,
  },
})
