import type { Logged } from '../journal/entry-log.ts'
import type { Things } from '../setup/things.ts'
import type { WasteEntry } from './waste-log.ts'

/** What the sumps gave in a span of days, in litres. */
export interface WasteGiven {
  /** Drawn off, and from cleanouts. */
  emulsion: number
  /** Skimmed. */
  oil: number
  /** Draw-offs, skims and cleanouts that told no amount. */
  unmeasured: number
}

/**
 * What left the sumps as waste. A cleanout's litres are all of its waste: what was drawn off the same sump on the same day is part of them. Of a
 * straight oil what is drawn off is oil.
 *
 * @param log entries of the span, in any order
 * @param dayAt the shop's calendar day of an instant
 */
export function wasteGiven(
  log: readonly Logged<WasteEntry>[],
  things: Things,
  dayAt: (at: string) => number,
): WasteGiven {
  const cleaned = new Set(
    log.flatMap(({ at, kept }) =>
      kept.kind === 'cleanout' && kept.litres !== null ? [`${kept.sump} ${dayAt(at)}`] : [],
    ),
  )
  const given: WasteGiven = { emulsion: 0, oil: 0, unmeasured: 0 }
  for (const { at, kept } of log) {
    if (kept.kind !== 'drawoff' && kept.kind !== 'skim' && kept.kind !== 'cleanout') continue
    const sump = things.sump.get(kept.sump)
    if (sump === undefined) continue
    if (kept.kind === 'drawoff' && cleaned.has(`${kept.sump} ${dayAt(at)}`)) continue
    if (kept.litres === null) given.unmeasured += 1
    else if (kept.kind === 'skim' || things.fluid.get(sump.fluid)?.class === 'straight-oil') given.oil += kept.litres
    else given.emulsion += kept.litres
  }
  return given
}
