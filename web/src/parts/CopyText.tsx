import { useState } from 'preact/hooks'

const WORDS = { copy: 'Copy the text', copied: 'Copied' } as const

/** A text to hand on: to read, and to copy. Over plain http the browser has no clipboard; it then stays to be marked by hand. */
export const CopyText = ({ text }: { readonly text: string }) => {
  const [copied, setCopied] = useState<string | null>(null)
  return (
    <div class="tight">
      <p class="letter">{text}</p>
      {'clipboard' in navigator ? (
        <button
          type="button"
          class="thin"
          onClick={() => void navigator.clipboard.writeText(text).then(() => setCopied(text))}
        >
          {copied === text ? WORDS.copied : WORDS.copy}
        </button>
      ) : null}
    </div>
  )
}
