import type { Litres, Millimetres } from '../quantities.ts'
import { requireRange } from '../require.ts'

interface Placed {
  /** How far above the vessel's floor the shape begins; 0 unless given. Shapes at one height stand side by side. */
  from?: Millimetres | undefined
}

/** One simple body of a vessel, in millimetres, each above 0. */
export type Shape =
  | ({ kind: 'box'; length: Millimetres; width: Millimetres; height: Millimetres } & Placed)
  | ({ kind: 'horizontal-cylinder'; diameter: Millimetres; length: Millimetres } & Placed)
  | ({ kind: 'vertical-cylinder'; diameter: Millimetres; height: Millimetres } & Placed)
  /** A trough with sloping sides: rectangles below and above, straight sides between. */
  | ({
      kind: 'frustum'
      bottomLength: Millimetres
      bottomWidth: Millimetres
      topLength: Millimetres
      topWidth: Millimetres
      height: Millimetres
    } & Placed)
  /** A round funnel or tub; one of the two diameters may be 0. */
  | ({ kind: 'cone-frustum'; bottomDiameter: Millimetres; topDiameter: Millimetres; height: Millimetres } & Placed)

/** From the shape's own floor to its top. */
export function shapeHeight(shape: Shape): Millimetres {
  return shape.kind === 'horizontal-cylinder' ? shape.diameter : shape.height
}

/**
 * Litres in a shape filled to `depth` above its own floor; below it nothing, above its top all it holds.
 *
 *     box                 length · width · depth
 *     vertical cylinder   π r² · depth
 *     horizontal cylinder length · (r² acos(1 − depth/r) − (r − depth) √(2 r depth − depth²))
 *     frustum             ∫ (bottomLength + s ΔL)(bottomWidth + s ΔW) height ds, s from 0 to depth/height
 *     cone frustum        π/3 · depth · (r0² + r0 r + r²)        r: radius at that depth
 *
 * with 10⁶ mm³ to the litre.
 *
 * @throws {RangeError} a size that is not above 0 (cone frustum: not both), or a depth that is no number
 */
export function shapeVolume(shape: Shape, depth: Millimetres): Litres {
  requireShape(shape)
  requireRange('depth', depth, {})
  const height = shapeHeight(shape)
  return cubicMillimetres(shape, Math.min(Math.max(depth, 0), height)) / 1e6
}

function cubicMillimetres(shape: Shape, depth: Millimetres): number {
  switch (shape.kind) {
    case 'box':
      return shape.length * shape.width * depth
    case 'vertical-cylinder':
      return (Math.PI / 4) * shape.diameter ** 2 * depth
    case 'horizontal-cylinder':
      return shape.length * segmentArea(shape.diameter / 2, depth)
    case 'frustum': {
      const share = depth / shape.height
      const [length, width] = [shape.bottomLength, shape.bottomWidth]
      const [longer, wider] = [shape.topLength - length, shape.topWidth - width]
      return (
        depth * (length * width + (share * (length * wider + width * longer)) / 2 + (share ** 2 * longer * wider) / 3)
      )
    }
    case 'cone-frustum': {
      const below = shape.bottomDiameter / 2
      const above = below + ((shape.topDiameter / 2 - below) * depth) / shape.height
      return (Math.PI / 3) * depth * (below ** 2 + below * above + above ** 2)
    }
  }
}

/** The part of a circle below a chord at `depth`; the angle by atan2, which stays exact where acos does not, near the ends. */
function segmentArea(radius: number, depth: number): number {
  const halfChord = Math.sqrt(Math.max(0, depth * (2 * radius - depth)))
  const angle = Math.atan2(halfChord, radius - depth)
  return Math.max(0, radius ** 2 * angle - (radius - depth) * halfChord)
}

/**
 * Stops a shape that is none.
 *
 * @param path where the shape stands in what was given, as in `shapes.0.`
 * @throws {RangeError} naming the size at fault
 */
export function requireShape(shape: Shape, path = ''): void {
  const { kind, from = 0, ...sizes } = shape
  requireRange(`${path}from`, from, { min: 0 })
  for (const [name, size] of Object.entries(sizes)) {
    requireRange(`${path}${name}`, size, kind === 'cone-frustum' && name !== 'height' ? { min: 0 } : { above: 0 })
  }
  if (shape.kind === 'cone-frustum' && shape.bottomDiameter === 0) {
    requireRange(`${path}topDiameter`, shape.topDiameter, { above: 0 })
  }
}
