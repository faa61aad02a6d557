import { createServer, type IncomingMessage, type ServerResponse } from 'node:http'
import { once } from 'node:events'

/**
 * Stands before a club's server and can pass for one with a newer build of the app: each file has another name then, in every text that
 * names it, and the old names are gone.
 */
export type NextBuild = {
  readonly address: string
  readonly update: () => void
  readonly stop: () => Promise<void>
}

/** A file of the build: its name ends in a hash of eight signs. */
const BUILT_FILE = /([\w.]+-[\w-]{8})\.(m?js|css|woff2)(?=["'`)?])/gu

const IS_TEXT = /^(?:text\/(?:html|css|javascript)|application\/javascript)/u

/** The version is a hash over the files, so other files are another version. */
const asNext = (text: string): string =>
  text.replaceAll(BUILT_FILE, '$1.next.$2').replace(/"version":"\w+"/u, '"version":"next"')

const pass = async (
  target: string,
  isNext: boolean,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> => {
  const path = request.url ?? '/'
  if (isNext && path.startsWith('/assets/') && !path.includes('.next.')) {
    response.writeHead(404)
    return void response.end()
  }
  const asked = path.replace('.next.', '.')
  const chunks: Buffer[] = []
  for await (const chunk of request) chunks.push(chunk as Buffer)
  const { host: _host, connection: _connection, 'content-length': _length, ...headers } = request.headers
  const answer = await fetch(`${target}${asked}`, {
    method: request.method ?? 'GET',
    headers: { ...(headers as Record<string, string>), origin: target },
    ...(chunks.length === 0 ? {} : { body: Buffer.concat(chunks) }),
  })
  const type = answer.headers.get('content-type') ?? 'text/plain'
  response.writeHead(answer.status, { 'content-type': type, 'cache-control': 'no-cache' })
  if (type.startsWith('text/event-stream')) return void response.end()
  const body = Buffer.from(await answer.arrayBuffer())
  response.end(isNext && IS_TEXT.test(type) ? asNext(body.toString()) : body)
}

/** Starts it before the server at `target`. */
export const startNextBuild = async (target: string): Promise<NextBuild> => {
  let isNext = false
  const server = createServer((request, response) => {
    pass(target, isNext, request, response).catch(() => response.destroy())
  })
  server.listen(0, '127.0.0.1')
  await once(server, 'listening')
  const at = server.address()
  if (at === null || typeof at === 'string') throw new Error('the server before the server has no port')
  return {
    address: `http://127.0.0.1:${at.port}`,
    update: () => {
      isNext = true
    },
    stop: async () => {
      server.closeAllConnections()
      server.close()
      await once(server, 'close')
    },
  }
}
