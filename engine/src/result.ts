/** An expected outcome as a value: either the answer, or a typed error that carries its facts. Bugs throw; these do not. */
export type Result<T, E> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly error: E }

/** Wraps an answer. */
export const ok = <T>(value: T): { readonly ok: true; readonly value: T } => ({ ok: true, value })

/** Wraps an expected failure. */
export const fail = <E>(error: E): { readonly ok: false; readonly error: E } => ({ ok: false, error })
