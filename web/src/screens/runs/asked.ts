import { useLocation } from 'preact-iso'

/** What the address of the page asks for, so that a sheet can be handed on as a link and comes back after a reload. */
export type Asked = {
  /** Which step and machine; null for the first. */
  readonly key: string | null
  /** Heading of the first pass, degrees; null for the best. */
  readonly headingDeg: number | null
  /** Angle of a later pass; null for the usual one. */
  readonly turnDeg: number | null
}

const degreesOf = (text: string | undefined, most: number): number | null => {
  const degrees = Number(text)
  return text === undefined || text === '' || !(degrees >= 0 && degrees <= most) ? null : degrees
}

/** What is asked, and a way to ask for something else. */
export const useAsked = (): readonly [Asked, (changed: Partial<Asked>) => void] => {
  const { path, query, route } = useLocation()
  const asked: Asked = {
    key: query['step'] ?? null,
    headingDeg: degreesOf(query['heading'], 360),
    turnDeg: degreesOf(query['turn'], 180),
  }
  const ask = (changed: Partial<Asked>): void => {
    const { key, headingDeg, turnDeg } = { ...asked, ...changed }
    const words = Object.entries({ step: key, heading: headingDeg, turn: turnDeg }).flatMap(
      ([name, value]) => (value === null ? [] : [`${name}=${encodeURIComponent(String(value))}`]),
    )
    route(words.length === 0 ? path : `${path}?${words.join('&')}`, true)
  }
  return [asked, ask]
}
