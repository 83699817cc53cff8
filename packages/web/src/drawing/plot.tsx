import { sayNumber } from '@sumpbook/fluid'
import type { ComponentChildren } from 'preact'
import { useRef } from 'preact/hooks'
import { type Axis, decimalsOf } from './scale.ts'
import { useWidth } from './width.ts'

/** Where things lie on a plot. */
export interface PlotPlaces {
  x(value: number): number
  y(value: number): number
  left: number
  right: number
  top: number
  bottom: number
}

interface PlotProps {
  x: Axis
  y: Axis
  height: number
  /** What is drawn against what, over the plot: "hardness, ppm, by weeks". */
  words: string
  /** The drawing in a sentence. */
  says: string
  /** Instead of plain numbers along the axis. */
  xTicks?: readonly { at: number; words: string }[]
  children(places: PlotPlaces): ComponentChildren
}

const edge = { left: 46, right: 16, top: 24, bottom: 26 }

/** A plain plot: figures at the left and below, thin lines across, nothing else; what it shows is drawn by its children. */
export function Plot({ x, y, height, words, says, xTicks, children }: PlotProps) {
  const frame = useRef<HTMLDivElement>(null)
  const width = useWidth(frame)
  const places: PlotPlaces = {
    left: edge.left,
    right: width - edge.right,
    top: edge.top,
    bottom: height - edge.bottom,
    x: (value) => edge.left + ((value - x.from) / (x.to - x.from)) * (width - edge.left - edge.right),
    y: (value) => height - edge.bottom - ((value - y.from) / (y.to - y.from)) * (height - edge.bottom - edge.top),
  }
  const along = xTicks ?? x.ticks.map((at) => ({ at, words: sayNumber(at, decimalsOf(x.step)) }))
  return (
    <div ref={frame} style={{ minHeight: height }}>
      {width > 0 && (
        <svg
          class="drawing"
          width={width}
          height={height}
          viewBox={`0 0 ${width} ${height}`}
          role="img"
          aria-label={says}
        >
          <path class="grid" d={y.ticks.map((at) => `M${places.left} ${places.y(at)}H${places.right}`).join('')} />
          {y.ticks.map((at) => (
            <text x={places.left - 8} y={places.y(at) + 5} text-anchor="end">
              {sayNumber(at, decimalsOf(y.step))}
            </text>
          ))}
          <text x={0} y={12}>
            {words}
          </text>
          <path d={along.map(({ at }) => `M${places.x(at)} ${places.bottom}v5`).join('')} />
          {along.map((tick) => (
            <text x={places.x(tick.at)} y={height - 6} text-anchor="middle">
              {tick.words}
            </text>
          ))}
          {children(places)}
        </svg>
      )}
    </div>
  )
}
