import { datesLocale, say, sayNumber } from '@sumpbook/fluid'
import { useId, useRef } from 'preact/hooks'
import { decimalsOf } from '../drawing/scale.ts'
import { useWidth } from '../drawing/width.ts'
import { short } from '../say/units.ts'
import { sayDay } from '../say/when.ts'
import { type FanDay, type Mark, middleOf, outlineOf, runsOf, scaleOf, thinned } from './fan-layout.ts'
import { FanMarks } from './fan-marks.tsx'
import { monthTicks } from './month-ticks.ts'

interface FanChartProps {
  /** The past, rising; ends at the last midnight. */
  past: readonly FanDay[]
  now: FanDay
  /** Rising. */
  ahead: readonly FanDay[]
  marks: readonly Mark[]
  /** All records of the sump, for what is a gap. */
  records: readonly number[]
  charges: readonly number[]
  /** On a lane of their own; without one where it is null. */
  pours: readonly number[] | null
  /** What it is kept between; an end that is not set is null. */
  band: { low: number | null; high: number | null } | null
  target: number | null
  /** The unit of the figures: "%", "ppm". */
  unit: string
  decimals: number
  /** From where the drawing runs, milliseconds since 1970. */
  from: number
  timeZone: string
  /** The drawing in a sentence or two. */
  says: string
  height?: number
  zero?: boolean
}

const edge = { left: 46, right: 14, top: 26 }
/** Days ahead are as long as days past, but never less than this share of the drawing. */
const leastAhead = 0.18
const usualHeight = 290

/**
 * Where a sump stood, stands and will stand: fans of 50 and 90 %, what was read as circles, gaps left as gaps. To the right of the
 * upright it is the days ahead with nothing done.
 */
export function FanChart(props: FanChartProps) {
  const frame = useRef<HTMLDivElement>(null)
  const width = useWidth(frame)
  return (
    <div ref={frame} style={{ minHeight: props.height ?? usualHeight }}>
      {width > 0 && <Drawing {...props} width={width} />}
    </div>
  )
}

function Drawing({
  past,
  now,
  ahead,
  marks,
  records,
  charges,
  pours,
  band,
  target,
  unit,
  decimals,
  from,
  timeZone,
  says,
  height = usualHeight,
  zero = false,
  width,
}: FanChartProps & { width: number }) {
  const clip = useId()
  const ends = [band?.low, band?.high].filter((value) => value != null)
  const scale = scaleOf({
    past: [...past, now],
    ahead,
    marks: marks.filter((mark) => !mark.isWithdrawn && !mark.isInDoubt),
    limits: ends,
    zero,
  })
  const right = width - edge.right
  const foot = height - 26
  const bottom = pours === null ? foot : foot - 24
  const to = ahead.at(-1)?.at ?? now.at
  const turn = Math.min(
    right - leastAhead * (right - edge.left),
    edge.left + ((now.at - from) / (to - from)) * (right - edge.left),
  )
  const x = (at: number) =>
    at <= now.at
      ? edge.left + ((at - from) / (now.at - from)) * (turn - edge.left)
      : turn + ((at - now.at) / (to - now.at)) * (right - turn)
  const y = (value: number) => bottom - ((value - scale.from) / (scale.to - scale.from)) * (bottom - edge.top)
  const place = { x, y }
  const shown = past.filter(({ at }) => at >= from && at < now.at)
  // A day for each two pixels: more cannot be told apart, and years of them would take long to draw.
  const most = Math.max(60, Math.round((turn - edge.left) / 2))
  const runs = runsOf([...shown, now], { records, charges }).map((run) =>
    thinned(run, Math.max(3, Math.ceil((most * run.length) / (shown.length + 1)))),
  )
  // Closer than its head is wide an arrow is a stroke.
  const isCrowded = pours !== null && pours.length * 8 > turn - edge.left
  const arrow = isCrowded ? 'v11' : 'v11m-3.5 -4l3.5 4l3.5 -4'
  const coming = [now, ...ahead]
  const sayMark = ({ at, value, span }: Mark) => {
    const said =
      span === null ? sayNumber(value, decimals) : `${sayNumber(span.low, decimals)}–${sayNumber(span.high, decimals)}`
    return `${sayDay(new Date(at).toISOString(), timeZone)}: ${said} ${unit}`
  }
  const edgeOf = (value: number | null, otherwise: number) =>
    Math.min(bottom, Math.max(edge.top, value === null ? otherwise : y(value)))
  return (
    <svg
      class="fan-chart"
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={says}
    >
      <clipPath id={clip}>
        <rect x={edge.left} width={right - edge.left} y={edge.top} height={bottom - edge.top} />
      </clipPath>
      {band !== null && (
        <rect
          class="strip"
          x={edge.left}
          width={right - edge.left}
          y={edgeOf(band.high, edge.top)}
          height={Math.max(0, edgeOf(band.low, bottom) - edgeOf(band.high, edge.top))}
        />
      )}
      {ends.map((value) => (
        <path class="limit" d={`M${edge.left} ${y(value)}H${right}`} />
      ))}
      {target !== null && <path class="target" d={`M${edge.left} ${y(target)}H${right}`} />}
      <g clip-path={`url(#${clip})`}>
        {runs.map((run) => (
          <>
            <path class="fan90" d={outlineOf(run, 'low90', place)} />
            <path class="fan50" d={outlineOf(run, 'low50', place)} />
            <path class="middle" d={middleOf(run, place)} />
          </>
        ))}
        <path class="fan90 ahead" d={outlineOf(coming, 'low90', place)} />
        <path class="fan50 ahead" d={outlineOf(coming, 'low50', place)} />
        <path class="middle ahead" d={middleOf(coming, place)} />
      </g>
      {scale.ticks.map((value) => (
        <text x={edge.left - 8} y={y(value) + 5} text-anchor="end">
          {sayNumber(value, decimalsOf(scale.step))}
        </text>
      ))}
      <text x={0} y={13}>
        {unit}
      </text>
      <path class="ground" d={`M${edge.left} ${foot}H${right}`} />
      {monthTicks(from, now.at, Math.floor((turn - edge.left) / 64)).map((at) => (
        <g key={at}>
          <path class="ground" d={`M${x(at)} ${foot}v5`} />
          <text x={Math.min(Math.max(x(at), edge.left + 12), turn - 46)} y={height - 4} text-anchor="middle">
            {monthOf(at)}
          </text>
        </g>
      ))}
      {charges
        .filter((at) => at >= from)
        .map((at) => (
          <path class="charge" d={`M${x(at)} ${edge.top}V${foot}`} key={at}>
            <title>{say('Fresh charge, {day}', { day: sayDay(new Date(at).toISOString(), timeZone) })}</title>
          </path>
        ))}
      <path class="today" d={`M${turn} ${edge.top - 6}V${foot + 5}`} />
      <text class="now" x={turn} y={height - 4} text-anchor="middle">
        {say('today')}
      </text>
      {right - turn > 90 && (
        <text x={right} y={height - 4} text-anchor="end">
          {say('{count, plural, one {+# day} other {+# days}}', { count: Math.round((to - now.at) / 86_400_000) })}
        </text>
      )}
      {pours !== null && (
        <path class="pours" d={pours.map((at) => `M${x(at).toFixed(1)} ${foot - 17}${arrow}`).join('')} />
      )}
      <FanMarks marks={marks} place={place} top={edge.top} bottom={bottom} sayMark={sayMark} />
      {target !== null && isFree(target, scale.ticks, scale.step) && (
        <text class="target" x={edge.left - 8} y={y(target) + 5} text-anchor="end">
          {short(target)}
        </text>
      )}
    </svg>
  )
}

/** A label of its own stands only where no tick's does. */
const isFree = (value: number, ticks: readonly number[], step: number) =>
  ticks.every((tick) => Math.abs(tick - value) > 0.55 * step)

const monthOf = (at: number) => monthFormat(datesLocale(), new Date(at).getUTCMonth() === 0).format(at)

const monthFormats = new Map<string, Intl.DateTimeFormat>()

/** Making a format takes far longer than using it: each is made once. */
function monthFormat(locale: string, withYear: boolean): Intl.DateTimeFormat {
  const key = `${locale} ${withYear}`
  const known = monthFormats.get(key)
  if (known !== undefined) return known
  const year = withYear ? ({ year: '2-digit' } as const) : {}
  const format = new Intl.DateTimeFormat(locale, { timeZone: 'UTC', month: 'short', ...year })
  monthFormats.set(key, format)
  return format
}
