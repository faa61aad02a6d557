import * as v from 'valibot'

/** What this browser keeps under a name; null where it keeps nothing, or refuses storage. */
export const keptText = (name: string): string | null => {
  try {
    return localStorage.getItem(name)
  } catch {
    return null
  }
}

/** Keeps a text under a name, or lets go of it (null). Without storage it lasts as long as the page has it. */
export const keepText = (name: string, text: string | null): void => {
  try {
    if (text === null) localStorage.removeItem(name)
    else localStorage.setItem(name, text)
  } catch {
    // The page goes on with what it has; the next one begins without.
  }
}

/** What this browser keeps under a name as JSON; null where there is none, or none that fits. */
export const keptJson = <S extends v.GenericSchema>(name: string, schema: S): v.InferOutput<S> | null => {
  try {
    const read = v.safeParse(schema, JSON.parse(keptText(name) ?? 'null'))
    return read.success ? read.output : null
  } catch {
    return null
  }
}
