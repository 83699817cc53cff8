import { sayNumber } from '@sumpbook/fluid'
import { short } from '../say/units.ts'

/** What a band line shows, in percent; null is unknown. */
export interface BandLineFigures {
  band: { low: number; high: number } | null
  target: number | null
  now: { mean: number; low90: number; high90: number } | null
  /** Where the pour will put it. */
  after: number | null
  /** Where it drifts in a week if nothing is done. */
  inAWeek?: number | null
}

/** A label and where it stands: its middle, on its row. */
export interface Label {
  text: string
  x: number
  kind: 'now' | 'after' | 'low' | 'target' | 'high'
}

export interface BandLineLayout {
  /** Percent to the drawing's own units. */
  x(percent: number): number
  /** From where the sump stands to where it drifts; null where that is no way to draw. */
  drift: { from: number; to: number } | null
  /** Above the strip: where it stands, where it will. */
  above: Label[]
  /** Under the axis: the band's ends and its target. */
  below: Label[]
}

/** Digits of the drawing's label size, tabular; wide enough for the widest of the usual system faces. */
export const digitWidth = 8.4
const gap = 7
const margin = 12

/**
 * Places everything on a band line of a width. The scale runs three quarters of the band beyond either end, and further
 * where the sump stands further out, so that sumps of one fluid share one scale as long as they are near their band.
 * Labels keep to rows of their own, off every line, and are moved apart where they would touch.
 */
export function bandLineLayout(
  { band, target, now, after, inAWeek = null }: BandLineFigures,
  { width }: { width: number },
): BandLineLayout {
  const { from, to } = scaleEnds({ band, target, now, after, inAWeek })
  const x = (percent: number) => margin + ((percent - from) / (to - from)) * (width - 2 * margin)
  const label = (kind: Label['kind'], percent: number | null | undefined, unit = ''): Label[] => {
    if (percent === null || percent === undefined) return []
    // What was measured is said to the tenth; what was set, as it was set.
    const text = kind === 'now' || kind === 'after' ? sayNumber(percent, 1) : short(percent)
    return [{ kind, text: text + unit, x: x(percent) }]
  }
  const below = distinct([
    ...label('low', band?.low),
    ...label('target', target),
    ...label('high', band !== null && band.high < 100 ? band.high : null, ' %'),
  ])
  return {
    x,
    drift: driftOf(now?.mean ?? null, inAWeek, { x, from, to }),
    above: spread([...label('now', now?.mean), ...label('after', after)], width),
    below: spread(below, width),
  }
}

/** A shorter arrow would only hide the dot. */
const shortestDrift = 14

/** A drift that runs off the drawing ends at its edge. */
function driftOf(
  now: number | null,
  inAWeek: number | null,
  { x, from, to }: { x(percent: number): number; from: number; to: number },
): BandLineLayout['drift'] {
  if (now === null || inAWeek === null) return null
  const drift = { from: x(now), to: x(Math.min(to, Math.max(from, inAWeek))) }
  return Math.abs(drift.to - drift.from) < shortestDrift ? null : drift
}

function scaleEnds({ band, target, now, after, inAWeek = null }: BandLineFigures): { from: number; to: number } {
  const middle = target ?? now?.mean ?? after ?? 5
  const { low, high: end } = band ?? { low: middle * 0.75, high: middle * 1.25 }
  // A band without an upper end runs to 100 %: the drawing stops where the fluid still has meaning.
  const high = end < 100 ? end : Math.max(low * 2, middle * 1.5)
  const room = Math.max((high - low) * 0.75, 0.5)
  // A drift may stretch the scale a little, never so far that the band is lost.
  const drift = inAWeek === null ? null : Math.min(inAWeek, high + 1.5 * room)
  const points = [now?.low90, now?.high90, after, target, drift].filter(
    (value) => value !== null && value !== undefined,
  )
  const edge = room / 3
  return {
    from: Math.max(0, Math.min(low - room, ...points.map((value) => value - edge))),
    to: Math.max(high + room, ...points.map((value) => value + edge)),
  }
}

/** A band whose target is its end says that figure once. */
const distinct = (labels: Label[]): Label[] =>
  labels.filter(
    ({ kind, x }, _, all) =>
      kind !== 'target' || all.every((other) => other.kind === kind || Math.abs(other.x - x) > 1),
  )

export const labelWidth = ({ text }: Pick<Label, 'text'>): number => text.length * digitWidth

/**
 * Moves labels of one row apart until none touch, as little as possible, and keeps them on the drawing.
 *
 * @param size how far each reaches along the row; by its text without one
 */
export function spread(labels: readonly Label[], width: number, size?: number): Label[] {
  const placed = labels.toSorted((a, b) => a.x - b.x).map((label) => ({ ...label }))
  const reach = (label: Label) => size ?? labelWidth(label)
  const distance = (a: Label, b: Label) => (reach(a) + reach(b)) / 2 + (size === undefined ? gap : 0)
  for (let round = 0; round < placed.length; round++) {
    for (let i = 1; i < placed.length; i++) {
      const [left, right] = [placed[i - 1]!, placed[i]!]
      const short = distance(left, right) - (right.x - left.x)
      if (short <= 0) continue
      left.x -= short / 2
      right.x += short / 2
    }
  }
  for (const [i, label] of placed.entries()) {
    const least = i === 0 ? reach(label) / 2 : placed[i - 1]!.x + distance(placed[i - 1]!, label)
    label.x = Math.max(label.x, least)
  }
  for (let i = placed.length - 1; i >= 0; i--) {
    const label = placed[i]!
    const next = placed[i + 1]
    const most = next === undefined ? width - reach(label) / 2 : next.x - distance(label, next)
    label.x = Math.min(label.x, most)
  }
  return placed
}
