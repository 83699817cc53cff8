import { rangeOf, say, sayNumber, sayReported, sayUnit } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { type AnalyteSeries, useAnalytes } from '../api/guidance.ts'
import type { Book } from '../api/types.ts'
import { Plot } from '../drawing/plot.tsx'
import { axisOf } from '../drawing/scale.ts'
import { SelectField } from '../fields/fields.tsx'
import { dayIn, sayDay, sayWhen } from '../say/when.ts'
import { sayWay } from './sample-ways.ts'

const dayMs = 86_400_000

/** Everything that was found of one sump but strength and level, series by series, newest first. */
export function FoundPart({ book }: { book: Book }) {
  const [sump, setSump] = useState(() => new URLSearchParams(location.search).get('sump') ?? '')
  const answer = useAnalytes(sump)
  const series = answer.data?.series ?? []
  return (
    <>
      <div class="narrow">
        <SelectField
          label={say('Sump')}
          value={sump}
          onInput={setSump}
          choices={[['', say('choose a sump')], ...(book.sumpList ?? []).map(({ id, name }) => [id, name] as const)]}
        />
      </div>
      {answer.error !== null && <p class="fault">{answer.error.message}</p>}
      {sump !== '' && answer.data !== undefined && series.length === 0 && (
        <p>{say('Nothing but strength and level has been read of it yet.')}</p>
      )}
      {series.map((one) => (
        <Series key={`${one.name} ${one.unit}`} series={one} timeZone={book.shop.timeZone} />
      ))}
    </>
  )
}

function Series({ series, timeZone }: { series: AnalyteSeries; timeZone: string }) {
  const { name, unit, points, says } = series
  const now = new Date().toISOString()
  const last = points.at(-1)!
  const title = name[0]!.toUpperCase() + name.slice(1)
  return (
    <section class="part" aria-label={name}>
      <h2>{name.startsWith('pH') ? name : title}</h2>
      <p>
        {say('Last {value}, {when}.', {
          value: `${sayReported(last.value, 2)} ${sayUnit(unit)}`.trim(),
          when: sayWhen(last.at, { timeZone, now }),
        })}{' '}
        {says}
      </p>
      {points.length > 1 && <Course series={series} timeZone={timeZone} />}
      <details>
        <summary>{say('All {count}', { count: sayNumber(points.length, 0) })}</summary>
        <table>
          <tbody>
            {points.toReversed().map(({ entry, at, value, method, lab, charge }) => (
              <tr key={entry}>
                <td>{sayDay(at, timeZone, now)}</td>
                <td class="figure">
                  {sayReported(value, 2)} {sayUnit(unit)}
                </td>
                <td class="quiet">
                  {[
                    method === null ? '' : sayWay(method),
                    lab ?? '',
                    charge === last.charge ? '' : say('of an earlier charge'),
                  ]
                    .filter((part) => part !== '')
                    .join(', ')}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </section>
  )
}

/** Points at the middle of their class, a line where the class reaches; germs by powers of ten. */
function Course({ series, timeZone }: { series: AnalyteSeries; timeZone: string }) {
  const { name, unit, isCount } = series
  const scale = (value: number) => (isCount ? Math.log10(Math.max(value, 10)) : value)
  const marks = series.points.map(({ entry, at, value }) => {
    const { low, high } = rangeOf(value)
    const top = Number.isFinite(high) ? high : low
    return { entry, x: Date.parse(at) / dayMs, low: scale(low), high: scale(top) }
  })
  const [from, to] = [marks[0]!.x, marks.at(-1)!.x]
  const all = marks.flatMap(({ low, high }) => [low, high])
  const y = axisOf(all, { most: 4 })
  const span = Math.max(to - from, 1)
  const x = { from: from - 0.03 * span, to: to + 0.03 * span, step: 1, ticks: [] }
  const words = isCount ? say('{name}, powers of ten CFU/mL', { name }) : `${name} ${sayUnit(unit)}`.trim()
  const ticks = [from, to].map((at) => ({ at, words: dayIn(new Date(at * dayMs).toISOString(), timeZone) }))
  return (
    <Plot
      x={x}
      y={y}
      height={170}
      words={words}
      says={say('{what}, {count, plural, one {# reading} other {# readings}} from {from} to {to}', {
        what: words,
        count: series.points.length,
        from: ticks[0]!.words,
        to: ticks[1]!.words,
      })}
      xTicks={span > 20 ? ticks : ticks.slice(1)}
    >
      {(places) => (
        <>
          <path
            class="curve"
            d={marks
              .map(({ x, low, high }, n) => `${n === 0 ? 'M' : 'L'}${places.x(x)} ${places.y((low + high) / 2)}`)
              .join('')}
          />
          {marks.map(({ entry, x, low, high }) => (
            <g key={entry}>
              {low !== high && <path class="miss" d={`M${places.x(x)} ${places.y(low)}V${places.y(high)}`} />}
              <circle class="mark" cx={places.x(x)} cy={places.y((low + high) / 2)} r={4} />
            </g>
          ))}
        </>
      )}
    </Plot>
  )
}
