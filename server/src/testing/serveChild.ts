import { startServer } from '../startServer.ts'

/** A server in a process of its own, for tests that kill it: `serveChild.ts DATA_DIR`. Prints its address. */
const [dataDir = ''] = process.argv.slice(2)
const { address } = await startServer({
  dataDir,
  port: 0,
  host: '127.0.0.1',
  log: ({ message }) => process.stderr.write(`${message}\n`),
})
process.stdout.write(`${address}\n`)
