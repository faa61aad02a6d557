/** The browser of tests, benchmarks and pictures: the machine's own, as `CHROMIUM_PATH` says or where Debian puts it. */
export const CHROMIUM = {
  executablePath: process.env['CHROMIUM_PATH'] ?? '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu', '--disable-dev-shm-usage'],
}
