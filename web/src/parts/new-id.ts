/** An id made from a name that no item of the list has yet: 'Spare mat' is 'spare-mat', then 'spare-mat-2'. */
export const newId = (name: string, taken: readonly string[]): string => {
  const base =
    name
      .toLowerCase()
      .replaceAll(/[^\p{L}\p{N}]+/gu, '-')
      .replaceAll(/^-|-$/gu, '')
      .slice(0, 56) || 'item'
  const free = Array.from({ length: taken.length + 1 }, (_, index) =>
    index === 0 ? base : `${base}-${index + 1}`,
  ).find((id) => !taken.includes(id))
  return free ?? base
}
