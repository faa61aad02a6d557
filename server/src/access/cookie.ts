/** Name of the cookie that holds a pass. */
const NAME = 'swardwright'

/** The pass in a `Cookie` header; null where there is none. */
export const passOfCookies = (header: string | undefined): string | null => {
  for (const pair of (header ?? '').split(';')) {
    const [name, value] = pair.trim().split('=')
    if (name === NAME && value !== undefined && /^[\w-]{1,200}$/u.test(value)) return value
  }
  return null
}

/** How a cookie is to be kept. */
export type CookieTerms = {
  /** Whole seconds; 0 takes it away. */
  readonly maxAgeS: number
  /** True over https: then it is never sent over plain http. */
  readonly isSecure: boolean
}

/** A `Set-Cookie` header: scripts of pages can't read it, and pages of others never send it along. */
export const cookieOf = (pass: string, { maxAgeS, isSecure }: CookieTerms): string =>
  [
    `${NAME}=${pass}`,
    'Path=/',
    'HttpOnly',
    'SameSite=Strict',
    `Max-Age=${maxAgeS}`,
    ...(isSecure ? ['Secure'] : []),
  ].join('; ')
