import { qrCode } from '@swardwright/present'

/** A text as a QR code, black on white by day and by night, since readers expect it so. */
export const Code = (props: { readonly text: string; readonly label: string }) => {
  const { size, path } = qrCode(props.text)
  return (
    <svg
      role="img"
      aria-label={props.label}
      viewBox={`0 0 ${size} ${size}`}
      width="260"
      height="260"
      shape-rendering="crispEdges"
    >
      <rect width="100%" height="100%" fill="#fff" />
      <path d={path} fill="#000" />
    </svg>
  )
}
