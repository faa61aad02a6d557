import { randomBytes, scrypt, timingSafeEqual, type ScryptOptions } from 'node:crypto'

/** What scrypt is asked to do: 2^log2N blocks of r x 128 bytes, p times. */
export type PasswordCost = { readonly log2N: number; readonly r: number; readonly p: number }

/**
 * Cost of a password: 2^15 blocks of 8 x 128 bytes (32 MiB), three times over. One of the settings that OWASP's Password Storage Cheat
 * Sheet gives for scrypt as equal to 128 MiB once; the smaller memory lets a shed's small computer check two at a time.
 */
export const COST: PasswordCost = { log2N: 15, r: 8, p: 3 }
const SALT_BYTES = 16
const KEY_BYTES = 32

const derived = (password: string, salt: Buffer, { log2N, r, p }: PasswordCost) =>
  new Promise<Buffer>((resolve, reject) => {
    const options: ScryptOptions = { N: 2 ** log2N, r, p, maxmem: 2 ** (log2N + 1) * r * 128 }
    // One password typed on two keyboards is one text (NFKC).
    scrypt(password.normalize('NFKC'), salt, KEY_BYTES, options, (error, key) =>
      error === null ? resolve(key) : reject(error),
    )
  })

const keptText = ({ log2N, r, p }: PasswordCost, salt: Buffer, key: Buffer): string =>
  ['scrypt', log2N, r, p, salt.toString('base64url'), key.toString('base64url')].join('$')

/** What is kept of a password: cost, salt and key, so that the cost can grow without making old ones useless. */
export const hashPassword = async (password: string, cost: PasswordCost = COST): Promise<string> => {
  const salt = randomBytes(SALT_BYTES)
  return keptText(cost, salt, await derived(password, salt, cost))
}

/** Compared where there is no such account, so that the answer takes as long and tells nothing about names. No password has this key. */
export const NO_PASSWORD = keptText(COST, Buffer.alloc(SALT_BYTES), Buffer.alloc(KEY_BYTES))

/** Whether a password is the one that was kept. Throws when what was kept is no such text: a damaged store is not a wrong password. */
export const isPassword = async (password: string, kept: string): Promise<boolean> => {
  const [scheme, log2N, r, p, salt, key] = kept.split('$')
  if (scheme !== 'scrypt' || salt === undefined || key === undefined)
    throw new Error('a password in the database is damaged')
  const wanted = Buffer.from(key, 'base64url')
  const cost = { log2N: Number(log2N), r: Number(r), p: Number(p) }
  const given = await derived(password, Buffer.from(salt, 'base64url'), cost)
  return wanted.length === given.length && timingSafeEqual(wanted, given)
}
