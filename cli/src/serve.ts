import type { Provider, RunningServer } from '@swardwright/server'
import { BadInput, type Command, type Io } from './command.ts'
import { readOptions, wholeNumber } from './options.ts'

/** Folder of the database unless another is given, under the folder the command is run in. */
export const DEFAULT_DATA_DIR = 'data'

const OPTIONS = { port: 'text', data: 'text', host: 'text', 'weather-url': 'text' } as const

/** Says where weather is asked for, where no option does. */
const WEATHER_URL = 'SWARDWRIGHT_WEATHER_URL'

/** What a person can do about an address that can't be had. */
const ADDRESS_WORDS: Readonly<Record<string, (port: number, host: string) => string>> = {
  EADDRINUSE: (port) => `port ${port} is taken by another program; choose another with --port`,
  EACCES: (port) => `this user may not listen on port ${port}; choose one above 1023 with --port`,
  EADDRNOTAVAIL: (_port, host) => `this machine has no address ${host}; choose another with --host`,
  ENOTFOUND: (_port, host) => `there is no machine called ${host}; choose another with --host`,
}

const codeOf = (error: unknown): string =>
  error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : ''

/** Resolves at the first of the two signals that ask a program to end. */
const askedToEnd = (): Promise<void> =>
  new Promise((resolve) => {
    const end = (): void => {
      process.off('SIGINT', end)
      process.off('SIGTERM', end)
      resolve()
    }
    process.on('SIGINT', end)
    process.on('SIGTERM', end)
  })

/** The server's packages take most of a command's start, so only the commands that need them load them. */
const server = () => import('@swardwright/server')

/** The weather service that the operator named; null where none was. */
const weatherProvider = async (option: string | undefined): Promise<Provider | null> => {
  const [name, address] =
    option === undefined ? [WEATHER_URL, process.env[WEATHER_URL]] : ['--weather-url', option]
  if (address === undefined || address === '') return null
  const { providerOf } = await server()
  const provider = providerOf(address)
  if (provider !== null) return provider
  throw new BadInput(
    `${name} is '${address}'; it must be a web address such as https://weather.example, or one with {kind} in it for forecast, ensemble or archive`,
  )
}

type Where = { readonly port: number; readonly host: string; readonly dataDir: string }

const started = async (
  { port, host, dataDir }: Where,
  provider: Provider | null,
  io: Io,
): Promise<RunningServer> => {
  const { startServer } = await server()
  try {
    return await startServer({
      port,
      host,
      dataDir,
      weatherProvider: provider,
      log: ({ level, message }) => io.err(`${level}: ${message}`),
    })
  } catch (error) {
    const words = ADDRESS_WORDS[codeOf(error)]
    if (words !== undefined) throw new BadInput(words(port, host), { cause: error })
    throw new BadInput(
      `can't keep data in ${dataDir}: ${error instanceof Error ? error.message : String(error)}`,
      { cause: error },
    )
  }
}

/** Serves the app until the process is asked to end; the first line printed is the address. */
export const serve: Command = {
  noun: 'serve',
  verb: '',
  usage: '[--port N] [--data DIR] [--host H] [--weather-url URL]',
  summary: 'serve the app and keep the journals',
  run: async (argv, io) => {
    const { options } = readOptions(argv, OPTIONS)
    const { DEFAULT_HOST, DEFAULT_PORT } = await server()
    const port = wholeNumber('port', options.port, { min: 0, max: 65_535 }) ?? DEFAULT_PORT
    const provider = await weatherProvider(options['weather-url'])
    const ended = askedToEnd()
    const where = {
      port,
      host: options.host ?? DEFAULT_HOST,
      dataDir: options.data ?? DEFAULT_DATA_DIR,
    }
    const running = await started(where, provider, io)
    io.out(`Swardwright is at ${running.address}`)
    if (!running.singleUser)
      io.err('Others can reach this address, so everybody needs an access token: swardwright token create')
    await ended
    await running.close()
    return 0
  },
}
