import { say, sayNumber } from '@sumpbook/fluid'
import { short } from '../say/units.ts'
import { type BandLineFigures, bandLineLayout, type Label } from './layout.ts'
import './band-line.css'

const width = 340
/** Rows of the drawing, from the top: labels, the strip with its marks, the axis, labels. No line enters a label's row. */
const row = { above: 14, arc: 24, middle: 44, axis: 61, below: 80, height: 86 }

/**
 * The fluid's band as a strip, its target as an upright, the sump as a dot with its 90 % interval (hollow where it
 * stands outside the band), a hollow mark where the pour will put it, and a dotted arrow to where it drifts in a week.
 */
export function BandLine(figures: BandLineFigures) {
  const { band, target, now, after } = figures
  const { x, drift, above, below } = bandLineLayout(figures, { width })
  return (
    <svg class="band-line" viewBox={`0 0 ${width} ${row.height}`} role="img" aria-label={sayBandLine(figures)}>
      {band !== null && <Strip band={band} x={x} y={row.middle - 11} height={22} width={width} />}
      <path
        class="axis"
        d={`M4 ${row.axis}H${width - 4}${below.map(({ kind }) => tickAt(x(figureOf(kind, figures)!))).join('')}`}
      />
      {target !== null && <path class="target" d={`M${x(target)} ${row.middle - 14}V${row.axis + 5}`} />}
      {after !== null && <path class="after" d={diamond(x(after), row.middle, 8)} />}
      {drift !== null && <Drift {...drift} />}
      {now !== null && <Standing now={now} x={x} y={row.middle} isOut={isOut(figures)} r={6.5} />}
      {now === null && (
        <text class="unknown" x={x(target ?? (band === null ? 5 : band.low))} y={row.above} text-anchor="middle">
          {say('not known')}
        </text>
      )}
      {above.map((label) => (
        <LabelText {...label} y={row.above} />
      ))}
      {below.map((label) => (
        <LabelText {...label} y={row.below} />
      ))}
    </svg>
  )
}

/** From above the dot in a bow to above the strip, with a head that points down. */
function Drift({ from, to }: { from: number; to: number }) {
  const [start, end, side] = [row.middle - 10, row.middle - 12, Math.sign(to - from)]
  const bow = `M${from + 3 * side} ${start}C${from + 6 * side} ${row.arc - 3} ${to - 6 * side} ${row.arc - 3} ${to} ${end}`
  return (
    <>
      <path class="drift" d={bow} />
      <path class="drift-head" d={`M${to - 4} ${end - 5}L${to} ${end}L${to + 4} ${end - 5}`} />
    </>
  )
}

/** Along the top of the strip, where the interval is not. */
function SmallDrift({ from, to }: { from: number; to: number }) {
  const side = Math.sign(to - from)
  return (
    <>
      <path class="drift" d={`M${from} 6Q${from + 2 * side} 2 ${from + 8 * side} 2H${to}`} />
      <path class="drift-head" d={`M${to - 4 * side} -1L${to} 2L${to - 4 * side} 5`} />
    </>
  )
}

/** The same without figures, for a list. */
export function SmallBandLine(figures: BandLineFigures) {
  const { band, target, now } = figures
  const { x, drift } = bandLineLayout(figures, { width: 180 })
  return (
    <svg class="band-line small" viewBox="0 0 180 26" role="img" aria-label={sayBandLine(figures)}>
      {band !== null && <Strip band={band} x={x} y={6} height={14} width={180} />}
      <path class="axis" d="M4 20H176" />
      {target !== null && <path class="target" d={`M${x(target)} 3V23`} />}
      {drift !== null && <SmallDrift {...drift} />}
      {now !== null && <Standing now={now} x={x} y={13} isOut={isOut(figures)} r={5} />}
    </svg>
  )
}

/** Up to the edge of the drawing where the band has no upper end. */
function Strip({
  band,
  x,
  y,
  height,
  width,
}: {
  band: { low: number; high: number }
  x(v: number): number
  y: number
  height: number
  width: number
}) {
  return (
    <rect class="strip" x={x(band.low)} width={Math.min(x(band.high), width - 4) - x(band.low)} y={y} height={height} />
  )
}

function Standing({
  now,
  x,
  y,
  isOut,
  r,
}: {
  now: NonNullable<BandLineFigures['now']>
  x(v: number): number
  y: number
  isOut: boolean
  r: number
}) {
  return (
    <>
      <path class="interval" d={`M${x(now.low90)} ${y}H${x(now.high90)}`} />
      <circle class={isOut ? 'dot out' : 'dot'} cx={x(now.mean)} cy={y} r={r} />
    </>
  )
}

function LabelText({ kind, text, x, y }: Label & { y: number }) {
  return (
    <text class={kind} x={x} y={y} text-anchor="middle">
      {text}
    </text>
  )
}

/** The drawing in one sentence. */
export function sayBandLine({ band, target, now, after, inAWeek = null }: BandLineFigures): string {
  const parts = [
    now === null
      ? say('Strength not known')
      : say('Stands at {strength} % ({low} to {high})', {
          strength: tenths(now.mean),
          low: tenths(now.low90),
          high: tenths(now.high90),
        }),
    sayKept({ band, target }),
    after === null ? '' : say('after the pour {strength} %', { strength: tenths(after) }),
    inAWeek === null ? '' : say('in a week {strength} % if nothing is done', { strength: tenths(inAWeek) }),
  ]
  return `${parts.filter((part) => part !== '').join('; ')}.`
}

function sayKept({ band, target }: Pick<BandLineFigures, 'band' | 'target'>): string {
  if (band === null) return target === null ? '' : say('target {strength} %', { strength: short(target) })
  const ends = { low: short(band.low), high: short(band.high) }
  return target === null
    ? say('band {low} to {high} %', ends)
    : say('band {low} to {high} %, target {target} %', { ...ends, target: short(target) })
}

const tenths = (value: number) => sayNumber(value, 1)

const isOut = ({ band, now }: BandLineFigures) =>
  band !== null && now !== null && (now.mean < band.low || now.mean > band.high)

const tickAt = (x: number) => `M${x} ${row.axis}v5`
const diamond = (x: number, y: number, r: number) => `M${x} ${y - r}l${r} ${r} ${-r} ${r} ${-r} ${-r}z`

function figureOf(kind: Label['kind'], { band, target }: BandLineFigures): number | undefined {
  if (kind === 'target') return target ?? undefined
  return kind === 'low' ? band?.low : band?.high
}
