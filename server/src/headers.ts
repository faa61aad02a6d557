import helmet from '@fastify/helmet'
import type { FastifyInstance } from 'fastify'

/**
 * Security headers. The app loads nothing from elsewhere but the picture tiles of a map whose address somebody typed in while drawing an outline (https only). `upgrade-insecure-requests`, HSTS and the opener policy are off: over plain http
 * on a club's own network they would break the page or only fill the console. Inline styles are let in, since drawings carry them.
 */
export const addSecurityHeaders = async (app: FastifyInstance): Promise<void> => {
  await app.register(helmet, {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'self'"],
        baseUri: ["'self'"],
        connectSrc: ["'self'", 'https:'],
        fontSrc: ["'self'", 'data:'],
        formAction: ["'self'"],
        frameAncestors: ["'none'"],
        imgSrc: ["'self'", 'https:', 'data:', 'blob:'],
        manifestSrc: ["'self'"],
        objectSrc: ["'none'"],
        scriptSrc: ["'self'"],
        styleSrc: ["'self'", "'unsafe-inline'"],
        workerSrc: ["'self'", 'blob:'],
      },
    },
    strictTransportSecurity: false,
    crossOriginOpenerPolicy: false,
    originAgentCluster: false,
    referrerPolicy: { policy: 'same-origin' },
  })
}
