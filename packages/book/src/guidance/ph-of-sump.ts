import { type PhVerdict, phVerdict, rangeOf, type ValueRange } from '@sumpbook/fluid'
import type { Value } from '../schema/values.ts'
import type { Things } from '../setup/things.ts'
import { strengthRead } from '../today/strength-read.ts'
import type { TestReading, ToldOfTests } from './told-tests.ts'

export interface PhLimits {
  act: number | null
  change: number | null
  floor: number | null
}

/** What a sump's last pH says beside that of its fresh charge. */
export function phOfSump(
  now: TestReading,
  { fresh, limits, told, things }: { fresh: TestReading | null; limits: PhLimits; told: ToldOfTests; things: Things },
): PhVerdict {
  // The fresh value itself has nothing to have fallen from.
  const before = fresh?.id === now.id ? null : fresh
  const of = (reading: TestReading) => phRange(reading, things)
  const asked = {
    now: of(now),
    fresh: before === null ? null : of(before),
    ...limits,
    ...(fresh?.id === now.id ? { act: null, change: null } : {}),
  }
  const verdict = phVerdict({ ...asked, strength: null })
  // Strength decides nothing where there is no fall to explain.
  if (before === null || verdict.outcome === 'in-order' || verdict.outcome === 'below-floor') return verdict
  return phVerdict({ ...asked, strength: strengthsOf(now, before, told, things) })
}

/** A strip shows the nearest of its pads: what it leaves open reaches half-way to the next ones. */
function phRange({ ph, instrument }: TestReading, things: Things): ValueRange {
  const { low, high } = held(rangeOf(ph as Value))
  if (low !== high) return { low, high }
  const pads = things.instrument.get(instrument ?? '')?.pads?.toSorted((a, b) => a - b)
  if (pads === undefined || pads.length < 2) return { low, high }
  const below = pads.findLast((pad) => pad < low)
  const above = pads.find((pad) => pad > high)
  return held({
    low: below === undefined ? low : (below + low) / 2,
    high: above === undefined ? high : (above + high) / 2,
  })
}

const held = ({ low, high }: ValueRange): ValueRange => ({ low: Math.max(0, low), high: Math.min(14, high) })

/** As far as both readings, or the charge, say how strong the fluid was. */
function strengthsOf(now: TestReading, fresh: TestReading | null, told: ToldOfTests, things: Things) {
  const charge = told.charges.at(-1)
  const fluid = things.fluid.get(charge?.fluid ?? things.sump.get(now.sump)?.fluid ?? '')
  const of = (reading: TestReading | null) =>
    reading === null ? null : (strengthRead(reading, fluid, things, charge?.lot ?? null)?.mean ?? null)
  const [then, present] = [of(fresh) ?? charge?.strength ?? null, of(now)]
  return then === null || present === null ? null : { fresh: then, now: present }
}
