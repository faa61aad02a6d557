/** An id made of a name: small letters and digits, dashes between; `fallback` when nothing is left. */
export const slugOf = (name: string, fallback: string): string => {
  const slug = name
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/gu, '')
    .slice(0, 64)
  return slug === '' ? fallback : slug
}

/** The first of `wanted`, `wanted-2`, `wanted-3`, ... that is not taken. */
export const freeId = (wanted: string, taken: ReadonlySet<string>): string => {
  let id = wanted
  for (let n = 2; taken.has(id); n++) id = `${wanted}-${n}`
  return id
}
