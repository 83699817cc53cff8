import { useRef, useState } from 'preact/hooks'
import type { HistoryEntry, RecipeBench } from '../api/types.ts'
import { useWidth } from '../drawing/width.ts'
import { short } from '../say/units.ts'
import { sayDay } from '../say/when.ts'
import { type History, historyOf, monthTicks, type Point, scaleOf } from './history-layout.ts'

interface ChartProps {
  entries: readonly HistoryEntry[]
  bench: Pick<RecipeBench, 'band' | 'target'>
  timeZone: string
  name: string
}

const day = 86_400_000
const periods = [
  ['13 weeks', 91],
  ['a year', 366],
  ['all', null],
] as const
const height = 270
const edge = { left: 44, right: 14, top: 12, lane: 228, bottom: 262 }

/** Readings as circles with their 90 % bars over the band, pours as arrows on a lane of their own, gaps left as gaps. */
export function HistoryChart({ entries, bench, timeZone, name }: ChartProps) {
  const [days, setDays] = useState<number | null>(91)
  const frame = useRef<HTMLDivElement>(null)
  const width = useWidth(frame)
  const last = entries.at(-1)
  if (last === undefined) return <p class="quiet">Nothing has been written down yet.</p>
  const end = Math.max(Date.now(), Date.parse(last.at))
  const start = days === null ? Date.parse(entries[0]!.at) - day : end - days * day
  const history = historyOf(entries, start)
  return (
    <div ref={frame}>
      <fieldset class="periods">
        <legend class="only-read">Period</legend>
        {periods.map(([words, length]) => (
          <button type="button" class="plain" aria-pressed={days === length} onClick={() => setDays(length)}>
            {words}
          </button>
        ))}
      </fieldset>
      {width > 0 && (
        <Drawing history={history} from={start} to={end} width={width} bench={bench} timeZone={timeZone} name={name} />
      )}
      <p class="quiet">
        ○ readings with their 90 % interval · ↓ pours · upright lines: a fresh charge · × set aside. The strip is the
        band. Broken where three weeks passed without a reading.
      </p>
    </div>
  )
}

interface DrawingProps extends Pick<ChartProps, 'bench' | 'timeZone' | 'name'> {
  history: History
  from: number
  to: number
  width: number
}

function Drawing({ history, from, to, width, bench: { band, target }, timeZone, name }: DrawingProps) {
  const scale = scaleOf(history, band)
  const x = (at: number) => edge.left + ((at - from) / (to - from)) * (width - edge.left - edge.right)
  const y = (percent: number) =>
    edge.lane - 14 - ((percent - scale.from) / (scale.to - scale.from)) * (edge.lane - 14 - edge.top)
  const right = width - edge.right
  const steps = Array.from(
    { length: Math.round((scale.to - scale.from) / scale.step) + 1 },
    (_, i) => scale.from + i * scale.step,
  )
  const bars = (points: readonly Point[]) =>
    points.map(({ at, low90, high90 }) => `M${x(at)} ${y(low90)}V${y(high90)}`).join('')
  return (
    <svg
      class="history"
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={sayHistory(history, name)}
    >
      {band !== null && (
        <rect
          class="strip"
          x={edge.left}
          width={right - edge.left}
          y={y(band.high)}
          height={y(band.low) - y(band.high)}
        />
      )}
      {target !== null && <path class="target" d={`M${edge.left} ${y(target)}H${right}`} />}
      {steps.map((percent) => (
        <text x={edge.left - 8} y={y(percent) + 5} text-anchor="end">
          {short(percent)}
          {percent === steps.at(-1) ? ' %' : ''}
        </text>
      ))}
      <path class="ground" d={`M${edge.left} ${edge.lane + 12}H${right}`} />
      {monthTicks(from, to, Math.floor(width / 64)).map((at) => (
        <g>
          <path class="ground" d={`M${x(at)} ${edge.lane + 12}v5`} />
          <text x={Math.min(Math.max(x(at), edge.left + 12), right - 14)} y={edge.bottom} text-anchor="middle">
            {new Intl.DateTimeFormat('en-GB', {
              timeZone: 'UTC',
              month: 'short',
              ...(new Date(at).getUTCMonth() === 0 ? { year: '2-digit' } : {}),
            }).format(at)}
          </text>
        </g>
      ))}
      {history.charges.map((at) => (
        <path class="charge" d={`M${x(at)} ${edge.top}V${edge.lane + 12}`}>
          <title>Fresh charge, {sayDay(new Date(at).toISOString(), timeZone)}</title>
        </path>
      ))}
      <path
        class="pours"
        d={history.additions.map((at) => `M${x(at)} ${edge.lane - 4}v11m-3.500 -4l3.500 4l3.500 -4`).join('')}
      />
      {history.runs.map((run) => (
        <path class="run" d={`M${run.map(({ at, mean }) => `${x(at)} ${y(mean)}`).join('L')}`} />
      ))}
      <path class="bars" d={bars(history.points)} />
      {history.points.map((point) => (
        <circle class="reading" cx={x(point.at)} cy={y(point.mean)} r={4}>
          <title>{sayPoint(point, timeZone)}</title>
        </circle>
      ))}
      {history.withdrawn
        .filter(({ mean }) => mean >= scale.from && mean <= scale.to)
        .map((point) => (
          <path class="aside" d={`M${x(point.at) - 4} ${y(point.mean) - 4}l8 8m0 -8l-8 8`}>
            <title>Set aside: {sayPoint(point, timeZone)}</title>
          </path>
        ))}
    </svg>
  )
}

const sayPoint = ({ at, mean, low90, high90 }: Point, timeZone: string) =>
  `${sayDay(new Date(at).toISOString(), timeZone)}: ${mean.toFixed(1)} % (${low90.toFixed(1)}–${high90.toFixed(1)})`

function sayHistory({ points, additions }: History, name: string): string {
  const means = points.map(({ mean }) => mean)
  if (means.length === 0) return `${name}: no reading in this period.`
  return `${name}: ${means.length} readings from ${Math.min(...means).toFixed(1)} to ${Math.max(...means).toFixed(1)} %, the last ${means.at(-1)!.toFixed(1)} %; ${additions.length} pours. The journal below has them all.`
}
