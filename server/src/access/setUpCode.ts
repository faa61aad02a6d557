import { createHash, randomInt, timingSafeEqual } from 'node:crypto'

/** Letters and digits that nobody mistakes for another when they are read off a screen. */
const LETTERS = 'ABCDEFGHJKLMNPQRSTUVWXYZ23456789'

/** A code such as `K7MP-2WQX`: 40 bits of chance, good while the server runs and there is no account. */
export const newSetUpCode = (): string => {
  const letters = Array.from({ length: 8 }, () => LETTERS[randomInt(LETTERS.length)] ?? '')
  return `${letters.slice(0, 4).join('')}-${letters.slice(4).join('')}`
}

const digest = (code: string): Buffer =>
  createHash('sha256')
    .update(code.toUpperCase().replaceAll(/[^A-Z0-9]/gu, ''))
    .digest()

/** Whether somebody typed the code, whatever the case and the dash. `null`: this server has none. */
export const isSetUpCode = (typed: string, code: string | null): boolean =>
  code !== null && timingSafeEqual(digest(typed), digest(code))
