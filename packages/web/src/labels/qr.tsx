import { qrPath } from './qr-path.ts'

/** A QR code, always black on white: a camera wants it so in the dark too. */
export function Qr({ text, label }: { text: string; label: string }) {
  const { size, path } = qrPath(text)
  return (
    <svg class="qr" viewBox={`0 0 ${size} ${size}`} role="img" aria-label={label} shape-rendering="crispEdges">
      <rect width={size} height={size} fill="#fff" />
      <path d={path} fill="#000" />
    </svg>
  )
}
