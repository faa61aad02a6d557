import type { Pair, Provider, RunningServer, StartOptions } from '@swardwright/server'
import { cantKeepData } from './cant-keep.ts'
import { tlsErrorWords } from './cert.ts'
import { BadInput, type Command, type Io } from './command.ts'
import { databaseAddress, readOptions, wholeNumber } from './options.ts'

/** Folder of the database unless another is given, under the folder the command is run in. */
export const DEFAULT_DATA_DIR = 'data'

const OPTIONS = {
  port: 'text',
  data: 'text',
  host: 'text',
  'weather-url': 'text',
  database: 'text',
  'tls-cert': 'text',
  'tls-key': 'text',
} as const

/** Says where weather is asked for, where no option does. */
const WEATHER_URL = 'SWARDWRIGHT_WEATHER_URL'

/** What a person can do about an address that can't be had. */
const ADDRESS_WORDS: Readonly<Record<string, (port: number, host: string) => string>> = {
  EADDRINUSE: (port) => `port ${port} is taken by another program; choose another with --port`,
  EACCES: (port) => `this user may not listen on port ${port}; choose one above 1023 with --port`,
  EADDRNOTAVAIL: (_port, host) => `this machine has no address ${host}; choose another with --host`,
  ENOTFOUND: (_port, host) => `there is no machine called ${host}; choose another with --host`,
}

/** Why the address can't be had; empty when something else is wrong: a folder that may not be opened has the code `EACCES` too. */
const addressCodeOf = (error: unknown, host: string): string => {
  if (!(error instanceof Error && 'code' in error && 'syscall' in error)) return ''
  const isOfAddress = error.syscall === 'listen' || ('hostname' in error && error.hostname === host)
  return isOfAddress && typeof error.code === 'string' ? error.code : ''
}

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

/** The certificate and key to serve with; null for plain http. */
const tlsFrom = async (
  certFile: string | undefined,
  keyFile: string | undefined,
  io: Io,
): Promise<Pair | null> => {
  if (certFile === undefined && keyFile === undefined) return null
  if (certFile === undefined || keyFile === undefined)
    throw new BadInput('--tls-cert and --tls-key go together')
  const pair = { cert: await io.readFile(certFile), key: await io.readFile(keyFile) }
  const { checkPair } = await server()
  const checked = checkPair(pair, Date.now())
  if (!checked.ok) throw new BadInput(tlsErrorWords(checked.error, `${certFile}, ${keyFile}`))
  return pair
}

type Where = Pick<StartOptions, 'port' | 'host' | 'dataDir' | 'weatherProvider'> & {
  readonly database: string | null
  readonly tls: Pair | null
}

const started = async (where: Where, io: Io): Promise<RunningServer> => {
  const { startServer } = await server()
  const { port, host, dataDir, database } = where
  try {
    return await startServer({ ...where, log: ({ level, message }) => io.err(`${level}: ${message}`) })
  } catch (error) {
    const words = ADDRESS_WORDS[addressCodeOf(error, host)]
    if (words !== undefined) throw new BadInput(words(port, host), { cause: error })
    throw cantKeepData(database === null ? dataDir : 'that database', error)
  }
}

/** What whoever started the server should know about who may come in. On the error stream: the first one has the address alone. */
const tellWhoMayCome = ({ address, singleUser, setUpCode }: RunningServer, io: Io): void => {
  if (setUpCode !== null && singleUser)
    io.err(
      'Whoever uses it on this machine is the manager, until an account is made under More, Who may come in',
    )
  if (setUpCode !== null)
    io.err(`The manager's account can be made from elsewhere at ${address}account with the code ${setUpCode}`)
  if (!singleUser)
    io.err(
      'Others can reach this address, so everybody logs in, joins by a link, or has an access token: swardwright token create',
    )
}

/** Serves the app until the process is asked to end; the first line printed is the address. */
export const serve: Command = {
  noun: 'serve',
  verb: '',
  usage:
    '[--port N] [--data DIR] [--host H] [--database postgres://...] [--tls-cert F --tls-key F] [--weather-url URL]',
  summary: 'serve the app and keep the journals',
  run: async (argv, io) => {
    const { options } = readOptions(argv, OPTIONS)
    const { DEFAULT_HOST, DEFAULT_PORT } = await server()
    const port = wholeNumber('port', options.port, { min: 0, max: 65_535 }) ?? DEFAULT_PORT
    const provider = await weatherProvider(options['weather-url'])
    const ended = askedToEnd()
    const running = await started(
      {
        port,
        host: options.host ?? DEFAULT_HOST,
        dataDir: options.data ?? DEFAULT_DATA_DIR,
        database: databaseAddress(options.database),
        weatherProvider: provider,
        tls: await tlsFrom(options['tls-cert'], options['tls-key'], io),
      },
      io,
    )
    io.out(`Swardwright is at ${running.address}`)
    tellWhoMayCome(running, io)
    await ended
    await running.close()
    return 0
  },
}
