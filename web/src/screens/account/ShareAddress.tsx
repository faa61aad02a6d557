import { useState } from 'preact/hooks'
import { Code } from './Code.tsx'
import { WORDS } from './words.ts'

/** An address to hand on: as a code to scan, as text, and to copy. */
export const ShareAddress = (props: { readonly address: string; readonly label: string }) => {
  const [copied, setCopied] = useState(false)
  const copy = async () => {
    await navigator.clipboard.writeText(props.address)
    setCopied(true)
  }
  return (
    <>
      <Code text={props.address} label={props.label} />
      <input type="text" readOnly value={props.address} aria-label={WORDS.copy} />
      {'clipboard' in navigator ? (
        <button type="button" class="thin" onClick={() => void copy()}>
          {copied ? WORDS.copied : WORDS.copy}
        </button>
      ) : null}
    </>
  )
}

const isLocalName = (host: string): boolean =>
  host === 'localhost' || host === '[::1]' || host.startsWith('127.')

/** True where this page is open under an address that no other device can reach. */
export const isLocalAddress = (): boolean => isLocalName(location.hostname)
