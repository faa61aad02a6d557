import type { ComponentChildren } from 'preact'
import { useLayoutEffect, useState } from 'preact/hooks'
import { inTurn } from './soon.ts'

/** The value once its turn has come; until then the one before it, and null at first. */
export const useInTurn = <T,>(value: T): T | null => {
  const [taken, take] = useState<{ readonly value: T } | null>(null)
  useLayoutEffect(() => inTurn(() => take({ value })), [value])
  return taken === null ? null : taken.value
}

/** A part of a page that is drawn when its turn comes, from the top of the page down; nothing stands in its place until then. */
export const InTurn = (props: { readonly children: () => ComponentChildren }) =>
  useInTurn(true) === null ? null : <>{props.children()}</>
