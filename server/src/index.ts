export {
  BODY_MAX_BYTES,
  REQUESTS_PER_MINUTE,
  buildServer,
  type LogEvent,
  type ServerOptions,
} from './buildServer.ts'
export {
  DEFAULT_HOST,
  DEFAULT_PORT,
  startServer,
  type RunningServer,
  type StartOptions,
} from './startServer.ts'
export { checkPair, newAuthority, newServerPair, type Pair, type TlsError } from './tls/authority.ts'
export { endToken, giveToken } from './access/tokenAccess.ts'
export { jsonSchemaOf, type JsonSchema } from './jsonSchema.ts'
export { openApiDocument } from './openApi.ts'
export { providerOf, type Provider } from './weather/provider.ts'
export { memoryStorage } from './storage/memory.ts'
export { openStorage } from './storage/openStorage.ts'
export type { JournalStore, Storage, TokenRow, TokenStore, WeatherStore } from './storage/storage.ts'
