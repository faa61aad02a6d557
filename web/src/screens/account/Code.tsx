import { encodeQR } from 'qr'

/** Modules of white around a code that readers need (ISO/IEC 18004: four). */
const QUIET = 4

/** A text as a QR code, black on white by day and by night, since readers expect it so. */
export const Code = (props: { readonly text: string; readonly label: string }) => {
  const rows = encodeQR(props.text, 'raw', { ecc: 'medium', border: QUIET })
  const dark = rows.flatMap((row, y) => row.map((isDark, x) => (isDark ? `M${x} ${y}h1v1h-1z` : ''))).join('')
  return (
    <svg
      role="img"
      aria-label={props.label}
      viewBox={`0 0 ${rows.length} ${rows.length}`}
      width="260"
      height="260"
      shape-rendering="crispEdges"
    >
      <rect width="100%" height="100%" fill="#fff" />
      <path d={dark} fill="#000" />
    </svg>
  )
}
