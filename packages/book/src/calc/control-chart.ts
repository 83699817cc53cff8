import { type ControlChart, controlChart, nelsonRules, say, sayNumber } from '@sumpbook/fluid'
import { z } from 'zod'
import { calculation } from './calculation.ts'
import { given } from './given.ts'

const rule = z.literal([1, 2, 3, 4, 5, 6, 7, 8])

/** A series held against a control chart. */
export const controlChartCalculation = calculation({
  name: 'control-chart',
  summary: 'a series of readings on a chart of single values, EWMA or CUSUM, and where it signals',
  input: z
    .strictObject({
      values: z.array(z.number()).describe('in the order they were read'),
      kind: z.enum(['individuals', 'ewma', 'cusum']).default('ewma'),
      lambda: z.number().optional().describe('EWMA: share of the newest value, 0.2'),
      width: z.number().optional().describe('limits in standard deviations, 3'),
      k: z.number().optional().describe('CUSUM: slack; in sd where an sd is given, else in the values’ unit; 0.5 sd'),
      h: z.number().optional().describe('CUSUM: decision limit, in the unit of k; 5 sd'),
      target: z.number().optional().describe('the mean of the values without it'),
      sd: z.number().optional().describe('of single values; from the moving range without it'),
      rules: z.array(rule).optional().describe('individuals: Nelson’s tests to run; all eight without it'),
    })
    .superRefine(({ kind, k, h, sd }, context) => {
      if (kind !== 'cusum' || sd !== undefined || (k === undefined) === (h === undefined)) return
      const path = [k === undefined ? 'k' : 'h']
      context.addIssue({ code: 'custom', path, message: 'k and h together, or an sd to reckon in' })
    }),
  run: ({ rules, ...series }) => {
    const chart = controlChart({ ...given(series), rules: rules ?? nelsonRules })
    return { ...chart, notes: notesOf(chart, series) }
  },
  say: ({ notes, ...chart }, reader) => {
    const figure = (value: number) => sayNumber(value, 3, reader)
    const last = (limit: number | number[]) => (typeof limit === 'number' ? limit : limit.at(-1)!)
    return [
      say('Centre {centre}, limits {lower} and {upper}.', {
        centre: figure(chart.centre),
        lower: figure(last(chart.lower)),
        upper: figure(last(chart.upper)),
      }),
      ...signalLines(chart),
      ...notes,
    ]
  },
})

/** "Value 14: the sum passes its upper limit." Values are counted from 1 here, as on paper. */
function signalLines(chart: ControlChart): string[] {
  const lines =
    chart.kind === 'individuals'
      ? chart.signals.map(({ index, rule }) => say('Value {place}: test {rule}.', { place: index + 1, rule }))
      : chart.signals.map(({ index, rule: side }) =>
          chart.kind === 'ewma'
            ? say('Value {place}: the average is beyond its {side, select, upper {upper} other {lower}} limit.', {
                place: index + 1,
                side,
              })
            : say('Value {place}: the sum passes its {side, select, upper {upper} other {lower}} limit.', {
                place: index + 1,
                side,
              }),
        )
  return lines.length === 0 ? [say('No signal.')] : lines
}

interface Asked {
  target?: number | undefined
  sd?: number | undefined
  k?: number | undefined
  h?: number | undefined
}

function notesOf(chart: ControlChart, { target, sd, k, h }: Asked): string[] {
  const notes = [say('"index" counts from 0.')]
  if (target === undefined || sd === undefined) {
    notes.push(
      say(
        'Centre and scatter taken from the values take in whatever was wrong among them: give both once the series is known.',
      ),
    )
  }
  if (chart.kind === 'individuals') {
    notes.push(
      say(
        'Each test gives some false signals, all eight together about one in 50 values: for one series one chart is enough.',
      ),
    )
  }
  if (chart.kind === 'cusum') {
    notes.push(
      sd === undefined && (k !== undefined || h !== undefined)
        ? say('k and h were taken in the unit of the values.')
        : say('k and h were taken in standard deviations.'),
    )
  }
  return notes
}
