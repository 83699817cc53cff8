import type { ShopEvent } from '../events.ts'
import { pass, takeBack } from '../flow.ts'
import { bringTo } from '../passing.ts'
import type { ShopEstimate, SumpState } from '../shop-estimate.ts'
import { workBetween } from '../work-calendar.ts'

/** A standstill told afterwards takes back what was reckoned as work; one to come waits for its time. */
export function standStill(shop: ShopEstimate, sump: SumpState, { from, until }: ShopEvent & { kind: 'idle' }): void {
  if (!(until > from)) return
  const told = { from: Math.max(from, sump.at), until }
  const past = workBetween(shop.calendar, from, Math.min(until, sump.at), sump.idles)
  if (past > 0) for (const { belief } of sump.branches) takeBack(belief, past, shop.priors.idle)
  if (told.until > told.from) sump.idles.push(told)
  sump.idles = sump.idles.filter((idle) => idle.until > sump.at - 60).slice(-8)
  if (until > from && from < sump.at) sump.idles.push({ from, until: Math.min(until, sump.at) })
}

/** Hours on the machine's counter tell a busy time from a slack one. */
export function runHours(shop: ShopEstimate, sump: SumpState, { at, hours }: ShopEvent & { kind: 'hours' }): void {
  const last = sump.hours
  if (last !== null && (at <= last.at || hours < last.hours)) {
    if (hours < last.hours) sump.hours = { at, hours, perDay: last.perDay }
    return
  }
  const work = last === null ? 0 : workBetween(shop.calendar, last.at, at, sump.idles)
  if (last === null || work < 0.5) {
    if (last === null) sump.hours = { at, hours, perDay: null }
    return
  }
  const perDay = (hours - last.hours) / work
  if (last.perDay !== null && last.perDay > 0) {
    const share = Math.min(2, perDay / last.perDay)
    bringTo(shop, sump, at)
    for (const { belief } of sump.branches) {
      if (share < 1) takeBack(belief, (1 - share) * work, shop.priors.idle)
      else pass(belief, { days: 1e-6, evaporation: (share - 1) * work, carryOff: (share - 1) * work })
    }
  }
  sump.hours = { at, hours, perDay: last.perDay === null ? perDay : 0.8 * last.perDay + 0.2 * perDay }
}
