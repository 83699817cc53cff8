import { type DialCurve, say } from '@sumpbook/fluid'
import { Plot } from '../drawing/plot.tsx'
import { axisOf } from '../drawing/scale.ts'
import type { Setting } from './mixer-curve.ts'

export function DialPlot({
  curve,
  checks = [],
  old = [],
  says,
}: {
  curve: DialCurve
  checks?: readonly { dial: number; percent: number }[]
  old?: readonly Setting[]
  says: string
}) {
  const all: Setting[] = [...curve.points, ...old, ...checks.map(({ dial, percent }): Setting => [dial, percent])]
  const x = axisOf(
    all.map(([dial]) => dial),
    { most: 8 },
  )
  const y = axisOf(
    all.map(([, percent]) => percent),
    { most: 4, zero: true },
  )
  const marks = checks.length > 0 ? checks : curve.points.map(([dial, percent]) => ({ dial, percent }))
  return (
    <Plot x={x} y={y} height={190} words={say('% poured, by the dial')} says={says}>
      {(places) => {
        const line = (points: readonly Setting[]) =>
          `M${points.map(([dial, percent]) => `${places.x(dial)} ${places.y(percent)}`).join('L')}`
        return (
          <>
            {old.length > 1 && <path class="dashed" d={line(old.toSorted((a, b) => a[0] - b[0]))} />}
            <path class="curve" d={line(curve.points)} />
            {marks.map(({ dial, percent }) => (
              <circle class="mark" cx={places.x(dial)} cy={places.y(percent)} r={4} />
            ))}
          </>
        )
      }}
    </Plot>
  )
}
