import { say } from '@sumpbook/fluid'
import type { Mark } from './fan-layout.ts'

interface FanMarksProps {
  marks: readonly Mark[]
  place: { x(at: number): number; y(value: number): number }
  top: number
  bottom: number
  /** What a mark says where one points at it. */
  sayMark(mark: Mark): string
}

/** So many marks can be pointed at one by one; of more nobody can, and each would take its time to draw. */
const pointable = 150

/**
 * A circle for what counts, a cross for what was set aside, a ringed circle for what does not fit; at the edge where it lies beyond. Years of them
 * are drawn in one stroke, but for those that do not fit.
 */
export function FanMarks({ marks, place: { x, y }, top, bottom, sayMark }: FanMarksProps) {
  const isMany = marks.length > pointable
  const together = isMany ? marks.filter(({ isInDoubt }) => !isInDoubt) : []
  const alone = isMany ? marks.filter(({ isInDoubt }) => isInDoubt) : marks
  const held = (value: number) => Math.min(bottom, Math.max(top, y(value)))
  const spans = marks.filter(({ span, isWithdrawn }) => span !== null && !isWithdrawn)
  const aside = together.filter(({ isWithdrawn }) => isWithdrawn)
  const counting = together.filter(({ isWithdrawn }) => !isWithdrawn)
  return (
    <>
      {spans.length > 0 && (
        <path
          class="span"
          d={spans.map(({ at, span }) => `M${fixed(x(at))} ${fixed(y(span!.low))}V${fixed(y(span!.high))}`).join('')}
        />
      )}
      {aside.length > 0 && (
        <path class="aside" d={aside.map(({ at, value }) => crossAt(x(at), held(value), 3)).join('')} />
      )}
      {counting.length > 0 && (
        <path class="reading many" d={counting.map(({ at, value }) => circleAt(x(at), held(value), 1)).join('')} />
      )}
      {alone.map((mark) =>
        mark.isWithdrawn ? (
          <path key={mark.entry} class="aside" d={crossAt(x(mark.at), held(mark.value), 4)}>
            <title>{say('Set aside: {mark}', { mark: sayMark(mark) })}</title>
          </path>
        ) : (
          <g key={mark.entry}>
            {mark.isInDoubt && <circle class="in-doubt" cx={x(mark.at)} cy={held(mark.value)} r={9} />}
            <circle class="reading" cx={x(mark.at)} cy={held(mark.value)} r={3.75} />
            <title>{mark.isInDoubt ? say('Does not fit: {mark}', { mark: sayMark(mark) }) : sayMark(mark)}</title>
          </g>
        ),
      )}
    </>
  )
}

const fixed = (length: number) => length.toFixed(1)
const crossAt = (x: number, y: number, r: number) =>
  `M${fixed(x - r)} ${fixed(y - r)}l${2 * r} ${2 * r}m0 ${-2 * r}l${-2 * r} ${2 * r}`
/** Two half circles (SVG 2, 9.3.8). */
const circleAt = (x: number, y: number, r: number) =>
  `M${fixed(x - r)} ${fixed(y)}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0`
