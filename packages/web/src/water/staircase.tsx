import { type BuildUpMineral, say } from '@sumpbook/fluid'
import { labelWidth, spread } from '../band-line/layout.ts'
import { Plot, type PlotPlaces } from '../drawing/plot.tsx'
import { axisOf } from '../drawing/scale.ts'
import { type Future, mineralWords, sayMineral } from './build.ts'

interface StaircaseProps {
  futures: readonly Future[]
  limit: number | null
  mineral: BuildUpMineral
  weeks: number
  says: string
}

const height = 280

/** Minerals at the full mark, a step a week: the water of now in a full line, the other in a broken one, the limit dotted. */
export function Staircase({ futures, limit, mineral, weeks, says }: StaircaseProps) {
  const values = futures.flatMap(({ series }) => series.map(({ value }) => value))
  const y = axisOf([...values, ...(limit === null ? [] : [limit])], { most: 5, zero: true })
  const stepWeeks = [1, 2, 4, 8, 13, 26].find((step) => weeks / step <= 7) ?? 52
  const ticks = Array.from({ length: Math.floor(weeks / stepWeeks) + 1 }, (_, i) => i * stepWeeks)
  const { name, unit } = mineralWords[mineral]
  return (
    <Plot
      x={{ from: 0, to: 7 * weeks, step: 7 * stepWeeks, ticks: [] }}
      y={y}
      height={height}
      words={say('{mineral}, {unit}, by weeks from now', { mineral: say(name), unit })}
      says={says}
      xTicks={ticks.map((week) => ({ at: 7 * week, words: String(week) }))}
    >
      {(places) => {
        const stairs = (series: Future['series']) =>
          series
            .map(
              ({ day, value }, i) =>
                `${i === 0 ? 'M' : 'H'}${i === 0 ? `${places.x(day)} ${places.y(value)}` : `${places.x(day)}V${places.y(value)}`}`,
            )
            .join('')
        const labels = labelsOf(futures, limit, places)
        return (
          <>
            {limit !== null && <path class="limit" d={`M${places.left} ${places.y(limit)}H${places.right}`} />}
            {futures.map(({ series }, i) => (
              <path class={i === 0 ? 'curve' : 'dashed'} d={stairs(series)} />
            ))}
            {futures.map(
              ({ atLimit }) =>
                limit !== null &&
                atLimit !== null &&
                atLimit <= 7 * weeks && <circle class="mark" cx={places.x(atLimit)} cy={places.y(limit)} r={5} />,
            )}
            {labels.map(({ text, kind, y: at }) => (
              <text class={kind} x={places.right - 2} y={at} text-anchor="end">
                {text}
              </text>
            ))}
          </>
        )
      }}
    </Plot>
  )
}

interface PlacedLabel {
  text: string
  kind: 'fluid-words' | 'limit-words'
  y: number
}

/** Over the right end of each line, moved apart where they would touch. */
function labelsOf(futures: readonly Future[], limit: number | null, { x, y, right }: PlotPlaces): PlacedLabel[] {
  /** The highest that a line stands under its label. */
  const under = ({ name, series }: Future) =>
    Math.max(
      ...series
        .filter(({ day }, i) => i === series.length - 1 || x(day + 7) > right - labelWidth({ text: name }))
        .map(({ value }) => value),
    )
  const wanted = [
    ...futures.map((future) => ({
      text: future.name,
      kind: 'fluid-words' as const,
      at: y(under(future)) - 12,
    })),
    ...(limit === null ? [] : [{ text: say('limit'), kind: 'limit-words' as const, at: y(limit) - 10 }]),
  ]
  const rows = spread(
    wanted.map(({ at }, i) => ({ kind: 'low' as const, text: String(i), x: at })),
    height,
    17,
  )
  return wanted.map(({ text, kind }, i) => ({ text, kind, y: rows.find((row) => row.text === String(i))!.x + 5 }))
}

/** The drawing in a sentence. */
export function sayStaircase(
  futures: readonly Future[],
  { mineral, weeks, limit, sump }: { mineral: BuildUpMineral; weeks: number; limit: number | null; sump: string },
): string {
  const courses = futures.map(({ name, series }) => {
    const [first, last] = [series[0]!.value, series.at(-1)!.value]
    return say('on {water} from {first} to {last}', {
      water: name,
      first: sayMineral(first, mineral),
      last: sayMineral(last, mineral),
    })
  })
  const blanks = { sump, mineral: say(mineralWords[mineral].word), weeks, courses: courses.join(', ') }
  return limit === null
    ? say('{sump}, {mineral} over {weeks} weeks: {courses}.', blanks)
    : say('{sump}, {mineral} over {weeks} weeks: {courses}; limit {limit}.', {
        ...blanks,
        limit: sayMineral(limit, mineral),
      })
}
