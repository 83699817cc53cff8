import { type Band, type CheckReason, nextCheck, testInterval, type Untouched } from '@sumpbook/fluid'
import { dayText } from '../estimate/shop-clock.ts'
import type { ShopStanding } from '../estimate/shop-standing.ts'
import { guidedInterval, shopGuidance } from '../guidance/shop-guidance.ts'
import type { Things } from '../setup/things.ts'
import type { NextCheck } from './today.ts'

/** A week without a reading: public guidance asks for a weekly check of concentration (DGUV Regel 109-003, Annex 3). */
export const usualEveryDays = 7

/**
 * Days after which every sump is read again, whatever is expected of it: the shop's own rule, a week where nobody said, never longer than
 * the guidance it has chosen lets it be.
 */
export function readEveryDays(things: Things): number {
  const shop = things.shop.readEveryDays ?? usualEveryDays
  const interval = testInterval({ guidance: guidedInterval(shopGuidance(things), 'concentration').days, shop })
  return interval.outcome === 'every' ? interval.days : shop
}

/**
 * The first day on which a sump that nobody touches stands outside its band with a probability above 5 %, never later than the shop's
 * rule after its last reading, and never on the day it was read.
 *
 * @param readAt when it was last read or charged, milliseconds since 1970-01-01 UTC; null where it never was
 */
export function nextCheckOf(
  { clock, ms, things }: ShopStanding,
  asked: Untouched,
  { band, readAt }: { band: Band | null; readAt: number | null },
): NextCheck {
  const now = clock.at(ms)
  const today = Math.floor(now)
  const on = (day: number, because: CheckReason): NextCheck => ({
    at: new Date(clock.instantOf(day)).toISOString(),
    on: dayText(day),
    because,
  })
  if (readAt === null) return on(today, 'never-read')
  const lastRead = Math.floor(clock.at(readAt))
  const byRule = lastRead + readEveryDays(things)
  if (byRule <= today) return on(byRule, 'rule')
  const { days, because } = nextCheck(asked, { band, within: byRule - today })
  const day = Math.max(Math.floor(now + days), lastRead + 1)
  return because === 'rule' || day >= byRule ? on(byRule, 'rule') : on(day, 'band')
}
