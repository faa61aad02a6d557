const KEY = 'swardwright.typed'
const LOOK_EVERY_MS = 250
const WAIT_MS = 10_000

type Field = HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement

type Typed = { readonly label: string; readonly nth: number; readonly value: string }

/** What was typed on a page and not handed on yet. */
export type CarriedPage = { readonly path: string; readonly typed: readonly Typed[] }

/** Passwords are never laid down, files can't be, and boxes to tick hand on at once. */
const OTHERS = ['password', 'file', 'checkbox', 'radio', 'hidden', 'submit', 'button']

const labelOf = (field: Field): string =>
  field.getAttribute('aria-label') ?? field.labels?.[0]?.textContent?.trim() ?? field.name

/** The fields of a page with what they are called; those with one name are told apart by their order. */
const fieldsOf = (
  root: ParentNode,
): readonly { readonly field: Field; readonly label: string; readonly nth: number }[] => {
  const seen = new Map<string, number>()
  return [...root.querySelectorAll<Field>('main input, main textarea, main select')]
    .filter((field) => !OTHERS.includes(field.type))
    .map((field) => {
      const label = labelOf(field)
      const nth = seen.get(label) ?? 0
      seen.set(label, nth + 1)
      return { field, label, nth }
    })
}

/** What stands in the fields of a page. */
export const typedOn = (root: ParentNode): readonly Typed[] =>
  fieldsOf(root)
    .filter(({ field }) => field.value !== '')
    .map(({ field, label, nth }) => ({ label, nth, value: field.value }))

/** Puts back what is not there by itself, as if it were typed. Answers with what found no field yet. */
export const putBack = (root: ParentNode, typed: readonly Typed[]): readonly Typed[] => {
  const fields = fieldsOf(root)
  return typed.filter(({ label, nth, value }) => {
    const field = fields.find((one) => one.label === label && one.nth === nth)?.field
    if (field === undefined) return true
    if (field.value === value) return false
    field.value = value
    field.dispatchEvent(new Event('input', { bubbles: true }))
    return false
  })
}

/** Lays down what is typed on this page, for the same page after it was loaded anew. */
export const carryTyped = (): void => {
  const page: CarriedPage = { path: location.pathname, typed: typedOn(document) }
  try {
    sessionStorage.setItem(KEY, JSON.stringify(page))
  } catch {
    // Without storage only what was handed on is there afterwards.
  }
}

const carried = (): CarriedPage | null => {
  try {
    const text = sessionStorage.getItem(KEY)
    sessionStorage.removeItem(KEY)
    return text === null ? null : (JSON.parse(text) as CarriedPage)
  } catch {
    return null
  }
}

/** Puts back what was laid down, as its fields appear; what has no field after a while is let go. */
export const restoreTyped = (): void => {
  const page = carried()
  if (page === null || page.path !== location.pathname) return
  let left = page.typed
  let done: readonly Typed[] = []
  const look = setInterval(() => {
    const before = left
    left = putBack(document, left)
    // A field may take its first value from the record just after it was put in the page; looked at once more it stays.
    putBack(document, done)
    done = before.filter((one) => !left.includes(one))
    if (left.length === 0 && done.length === 0) clearInterval(look)
  }, LOOK_EVERY_MS)
  setTimeout(() => clearInterval(look), WAIT_MS)
}
