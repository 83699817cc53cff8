import { type DialCheck, type DialCurve, type DialDrift, dialCurve, say, sayNumber } from '@sumpbook/fluid'
import type { Thing } from '../api/types.ts'
import { type Fault, readPlain } from '../fields/read.ts'
import { isEmptyRow, type Row } from '../fields/rows.ts'
import { type Measure, readMeasured, type Scale } from './measured.ts'

export type Setting = readonly [dial: number, percent: number]

export const settingsOf = (mixer: Thing | undefined): readonly Setting[] =>
  Array.isArray(mixer?.settings) ? (mixer.settings as [number, number][]) : []

/** The curve of a mixer's settings; null with fewer than two dials. */
export function curveOf(settings: readonly Setting[]): DialCurve | null {
  const checks = settings.map(([dial, percent]) => ({ dial, percent }))
  return new Set(checks.map(({ dial }) => dial)).size < 2 ? null : dialCurve(checks)
}

export type DialRow = Row<'dial' | 'measured'>

export interface DialRowsRead {
  checks: DialCheck[]
  faults: Partial<Record<'dial' | 'measured', Fault | string>>[]
}

/** Rows of a calibration. A row with one of its two halves is not yet a check, and is no fault. */
export function readDialRows(rows: readonly DialRow[], measure: Measure, scale: Scale | null): DialRowsRead {
  const checks: DialCheck[] = []
  const faults = rows.map((row): DialRowsRead['faults'][number] => {
    if (isEmptyRow(row)) return {}
    const dial = readPlain(row.dial, { min: -1e6, max: 1e6 })
    const measured = readMeasured(row.measured, measure, scale)
    if (!('fault' in dial) && !('fault' in measured) && dial.value !== null && measured.value !== null) {
      checks.push({ dial: dial.value, percent: measured.value })
    }
    return {
      ...('fault' in dial ? { dial: dial.fault } : {}),
      ...('fault' in measured ? { measured: measured.fault } : {}),
    }
  })
  return { checks, faults }
}

/** Settings for the book: to the hundredth of a percent, no finer than anybody measured. */
export const settingsFrom = ({ points }: DialCurve): Setting[] =>
  points.map(([dial, percent]) => [dial, Number(percent.toFixed(2))])

/** What a check says against the settings, in a sentence. */
export function sayDrift(drift: DialDrift, { dial, percent }: DialCheck): string {
  const at = sayNumber(dial, 2, {}, 0)
  if (drift.outcome === 'outside') {
    return say('The settings reach from {low} to {high} on the dial; they say nothing of {dial}.', {
      low: sayNumber(drift.low, 2, {}, 0),
      high: sayNumber(drift.high, 2, {}, 0),
      dial: at,
    })
  }
  const read = { dial: at, expected: sayNumber(drift.expected, 1), percent: sayNumber(percent, 1) }
  if (Math.abs(drift.drift) < 0.05) {
    return say('At {dial} the settings say {expected}\u00a0%; it pours {percent}\u00a0%: as set.', read)
  }
  const off = { ...read, amount: sayNumber(Math.abs(drift.drift), 1), side: drift.drift > 0 ? 'stronger' : 'weaker' }
  return drift.relative === null
    ? say(
        'At {dial} the settings say {expected}\u00a0%; it pours {percent}\u00a0%: {amount} {side, select, stronger {stronger} other {weaker}}.',
        off,
      )
    : say(
        'At {dial} the settings say {expected}\u00a0%; it pours {percent}\u00a0%: {amount} {side, select, stronger {stronger} other {weaker}}, {share}\u00a0% of it.',
        { ...off, share: sayNumber(Math.abs(100 * drift.relative), 0) },
      )
}
