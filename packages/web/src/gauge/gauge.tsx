import { message, say, sayVolume } from '@sumpbook/fluid'
import type { RecipeBench, Units } from '../api/types.ts'
import { spread } from '../band-line/layout.ts'
import { readerOf } from '../say/units.ts'
import './gauge.css'

interface GaugeProps {
  volume: { mean: number; low90: number; high90: number } | null
  bench: Pick<RecipeBench, 'fillVolume' | 'capacity' | 'minVolume'>
  units: Units
}

const height = 148
const top = 10
const bottom = height - 8
const vessel = { left: 6, right: 62 }

/** The sump in section: how full it is between bottom and brim, with notches for the full mark and the pumps' suction. */
export function Gauge({ volume, bench, units }: GaugeProps) {
  const reader = readerOf(units)
  const brim = bench.capacity ?? (bench.fillVolume === null ? null : 1.25 * bench.fillVolume)
  const full = brim ?? (volume === null ? null : 1.25 * volume.mean)
  if (full === null) return null
  const y = (litres: number) => bottom - (Math.min(litres, full) / full) * (bottom - top)
  const notches = [
    { litres: bench.capacity, words: message('brim {volume}') },
    { litres: bench.fillVolume, words: message('full mark {volume}') },
    { litres: bench.minVolume, words: message('suction {volume}') },
  ].filter((notch): notch is { litres: number; words: (typeof notch)['words'] } => notch.litres !== null)
  const labels = placed(
    notches.map(({ litres, words }) => ({
      at: y(litres),
      text: say(words, { volume: sayVolume(litres, reader) }),
      kind: 'notch',
    })),
  )
  const { left, right } = vessel
  return (
    <svg class="gauge" viewBox={`0 0 220 ${height}`} role="img" aria-label={sayGauge({ volume, bench, units })}>
      {volume !== null && (
        <rect class="filled" x={left} width={right - left} y={y(volume.mean)} height={bottom - y(volume.mean)} />
      )}
      <path class="wall" d={`M${left} ${top - 4}V${bottom}H${right}V${top - 4}`} />
      {notches.map(({ litres }, i) => (
        <path class="notch" d={`M${right - 12} ${y(litres)}H${right + 8}L${right + 22} ${labels[i]!.y - 5}`} />
      ))}
      {volume !== null && (
        <>
          <path class="level" d={`M${left} ${y(volume.mean)}H${right}`} />
          <path class="doubt-bar" d={`M${left + 14} ${y(volume.low90)}V${y(volume.high90)}`} />
        </>
      )}
      {labels.map(({ text, y: at }) => (
        <text x={right + 28} y={at}>
          {text}
        </text>
      ))}
    </svg>
  )
}

/** Labels at their notches, moved apart to a line's height where they would touch. */
function placed(labels: { at: number; text: string }[]): { text: string; y: number }[] {
  const line = 18
  // `spread` moves along one axis; a label here is as long as a line is high.
  const rows = spread(
    labels.map(({ at }, i) => ({ kind: 'low' as const, text: String(i), x: at })),
    height,
    line,
  )
  return labels.map(({ text }, i) => ({ text, y: rows.find((row) => row.text === String(i))!.x + 5 }))
}

export function sayGauge({ volume, bench, units }: GaugeProps): string {
  const reader = readerOf(units)
  const level = volume === null ? null : sayVolume(volume.mean, reader)
  if (bench.fillVolume === null) return level === null ? say('Level not known.') : `${level}.`
  const mark = sayVolume(bench.fillVolume, reader)
  return level === null
    ? say('Level not known; {mark} at the full mark.', { mark })
    : say('{level} of {mark} at the full mark.', { level, mark })
}
