import { encodeQR } from 'qr'

/** Modules of white around a code that readers need (ISO/IEC 18004: four). */
const QUIET = 4

/** A text as a QR code: side of its square in modules, quiet margin included, and the dark modules as the path of an SVG. */
export const qrCode = (text: string): { readonly size: number; readonly path: string } => {
  const rows = encodeQR(text, 'raw', { ecc: 'medium', border: QUIET })
  const path = rows.flatMap((row, y) => row.map((isDark, x) => (isDark ? `M${x} ${y}h1v1h-1z` : ''))).join('')
  return { size: rows.length, path }
}
