import { chartFromMixes, type KnownMix, type ProductFactor, productFactor, say, sayNumber } from '@sumpbook/fluid'
import { z } from 'zod'
import { calculation, NoAnswer } from './calculation.ts'

/** A product's factor from mixes of known strength. */
export const factorCalculation = calculation({
  name: 'factor',
  summary: 'a product’s percent per °Brix from mixes of known strength, and whether it is a straight line',
  input: z.strictObject({
    mixes: z
      .array(z.strictObject({ percent: z.number().describe('as made up'), brix: z.number().describe('as read') }))
      .describe('measure the concentrate, not the bucket'),
    throughZero: z.boolean().default(true).describe('false where the instrument was not set to zero on the water used'),
  }),
  run: ({ mixes, throughZero }) => {
    const found = productFactor(mixes, { throughZero })
    if (found.outcome === 'no-slope') {
      const slope = `${sayNumber(found.slope, 3)} °Brix a percent, within the scatter of the readings`
      throw new NoAnswer([{ pointer: '/mixes', found: slope, expected: 'readings that rise with the strength' }])
    }
    const { outcome: _, curvature, zero, ...factor } = found
    const bent = curvature?.bent ?? null
    return {
      ...factor,
      straight: bent === null ? null : !bent,
      brixChart: bent === true ? chartOf(mixes, throughZero) : null,
      notes: notesOf(found, throughZero),
    }
  },
  say: ({ factor, low90, high90, intercept, residualSd, brixChart, notes }, reader) => {
    const interval =
      low90 === null || high90 === null ? '' : ` (${sayNumber(low90, 3, reader)}–${sayNumber(high90, 3, reader)})`
    const found = `${sayNumber(factor, 3, reader)} % per °Brix${interval}`
    return [
      intercept === 0
        ? `${found}.`
        : say('{factor}, {brix} °Brix on plain water.', { factor: found, brix: sayNumber(intercept, 2, reader) }),
      residualSd === null
        ? ''
        : say('The readings lie {brix} °Brix about the line.', { brix: sayNumber(residualSd, 2, reader) }),
      ...(brixChart ?? []).map(
        ([brix, percent]) => `${sayNumber(brix, 1, reader)} °Brix  ${sayNumber(percent, 1, reader)} %`,
      ),
      ...notes,
    ]
  },
})

const chartOf = (mixes: readonly KnownMix[], throughZero: boolean) =>
  chartFromMixes(mixes, { throughZero }).map(([brix, percent]): [number, number] => [brix, percent])

type Found = Extract<ProductFactor, { outcome: 'factor' }>

function notesOf({ curvature, zero, n, low90 }: Found, throughZero: boolean): string[] {
  const notes = [say('A factor belongs to the product and its lot; calibrate again with a new one.')]
  if (low90 === null)
    notes.push(say('With no more mixes than this nothing shows how far readings scatter: make up some more.'))
  if (curvature === null) notes.push(say('Too few different strengths to tell whether the product is a straight line.'))
  else if (curvature.bent) {
    notes.push(
      say('Not a straight line: the line is up to {percent} % off among these mixes. Use a chart instead.', {
        percent: sayNumber(curvature.farthest, 2),
      }),
    )
  } else notes.push(say('A straight line, as far as {count} mixes can tell.', { count: n }))
  if (throughZero && zero?.off === true && curvature?.bent !== true) {
    notes.push(
      say(
        'The readings point to {brix} °Brix on plain water: set the instrument to zero on the water used, or give throughZero false.',
        { brix: sayNumber(zero.brix, 2) },
      ),
    )
  }
  return notes
}
