/** Version of the server, told by `/health` and the OpenAPI document; a test holds it to package.json. */
export const SERVER_VERSION = '0.1.0'
