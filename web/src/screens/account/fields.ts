import type { SecretField } from './SecretForm.tsx'
import { WORDS } from './words.ts'

/** The lines that several forms have. */
export const FIELDS = {
  name: { name: 'name', label: WORDS.name, autoComplete: 'username' },
  newName: { name: 'name', label: WORDS.name, hint: WORDS.nameHint, autoComplete: 'username' },
  code: { name: 'code', label: WORDS.code, autoComplete: 'one-time-code' },
  password: { name: 'password', label: WORDS.password, secret: true, autoComplete: 'current-password' },
  newPassword: {
    name: 'password',
    label: WORDS.password,
    hint: WORDS.passwordHint,
    secret: true,
    autoComplete: 'new-password',
  },
} as const satisfies Readonly<Record<string, SecretField>>
