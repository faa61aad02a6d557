import { existsSync } from 'node:fs'
import { extname, sep } from 'node:path'
import { fileURLToPath } from 'node:url'
import fastifyStatic from '@fastify/static'
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import { sendError } from './routes/registrar.ts'

/** Where the build of the app lies, seen from `src` and from `dist` alike. */
export const APP_FOLDER = fileURLToPath(new URL('../../web/dist/app/', import.meta.url))

/** Files under `assets` carry a hash of their content in their name, so they never change; all others are asked for anew. */
const cacheOf = (path: string): string =>
  path.includes(`${sep}assets${sep}`) ? 'public, max-age=31536000, immutable' : 'no-cache'

/** Addresses of the app's own screens: no file name, and not the API's. */
const isScreen = (request: FastifyRequest, path: string): boolean =>
  (request.method === 'GET' || request.method === 'HEAD') &&
  !path.startsWith('/api/') &&
  path !== '/api' &&
  path !== '/health' &&
  extname(path) === ''

const NOT_BUILT = 'The app is not built yet. Run: npm run build\n'

const sendScreen = (reply: FastifyReply, isBuilt: boolean): FastifyReply =>
  isBuilt
    ? reply.header('Cache-Control', 'no-cache').sendFile('index.html')
    : reply.code(503).type('text/plain; charset=utf-8').send(NOT_BUILT)

/** Serves the built app: its files, and its first page for the address of any screen. Everything else unknown gets an error of the API. */
export const serveApp = async (app: FastifyInstance, folder: string): Promise<void> => {
  const isBuilt = existsSync(`${folder}/index.html`)
  if (isBuilt)
    await app.register(fastifyStatic, {
      root: folder,
      cacheControl: false,
      // The build packs its texts beforehand, which is a third of the way over a poor line.
      preCompressed: true,
      setHeaders: (reply, path) => {
        void reply.header('Cache-Control', cacheOf(path))
      },
    })
  app.setNotFoundHandler((request, reply) => {
    const path = request.url.split('?')[0] ?? '/'
    return isScreen(request, path)
      ? sendScreen(reply, isBuilt)
      : sendError(reply, { type: 'routeUnknown', method: request.method, path })
  })
}
