import type { JournalReader } from '../store/store.ts'
import { asTold, type TestReading, type ToldOfShop, type ToldOfTests } from './told-tests.ts'

/** A pH read later than this after the charge is no fresh value any more (common practice, no source). */
export const freshDays = 14

/**
 * The first pH of the present charge, while it was fresh; null where nobody read one. Charges older than what was read of the journal are
 * looked up by themselves.
 */
export async function freshPh(
  journal: JournalReader,
  { sump, told, since, shop }: { sump: string; told: ToldOfTests; since: string; shop: ToldOfShop },
): Promise<TestReading | null> {
  const charge = told.charges.at(-1)
  if (charge === undefined) return null
  const until = new Date(Date.parse(charge.at) + freshDays * 86_400_000).toISOString()
  const isFresh = ({ ph, at }: TestReading) => ph !== undefined && at >= charge.at && at <= until
  if (charge.at >= since) return told.readings.find(isFresh) ?? null
  const known = shop.freshFound.get(charge.id)
  if (known !== undefined) return known
  const entries = await journal.entries({ sump, kinds: ['reading'], order: 'time', since: charge.at, until })
  const readings = entries.filter(({ id, body }) => !shop.withdrawn.has(id) && body.includes('"ph"')).map(asTold)
  const found = readings.find(isFresh) ?? null
  shop.freshFound.set(charge.id, found)
  return found
}
