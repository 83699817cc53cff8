import { encode } from 'uqr'

/**
 * A QR code (ISO/IEC 18004) as one path of unit squares, with the quiet edge of four modules that the standard asks for. A quarter of it may
 * be dirty or torn and it still reads.
 */
export function qrPath(text: string): { size: number; path: string } {
  const { size, data } = encode(text, { ecc: 'Q', border: 4 })
  const squares = data.flatMap((row, y) => row.map((isDark, x) => (isDark ? `M${x} ${y}h1v1h-1z` : '')))
  return { size, path: squares.join('') }
}
