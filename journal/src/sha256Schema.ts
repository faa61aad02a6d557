import * as v from 'valibot'

/** A SHA-256 (FIPS 180-4) as 64 hexadecimal digits in lower case. */
export const sha256 = v.pipe(
  v.string(),
  v.regex(/^[0-9a-f]{64}$/u, 'a SHA-256 as 64 hexadecimal digits in lower case'),
  v.description('SHA-256 of the file, which is its name'),
)
