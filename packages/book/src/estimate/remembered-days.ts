import type { DaySource } from './fold-shop.ts'
import type { ShopDay } from './shop-events.ts'
import { freshTranslation } from './translation.ts'

/** Events kept for the next time they are asked for; beyond them the journal is read again. */
const mostEvents = 150_000

/** Days that were given once from the first on are kept for as long as this source is, as far as they are not too many. */
export function rememberedDays(source: DaySource): DaySource {
  const kept: ShopDay[] = []
  let through = Number.NEGATIVE_INFINITY
  let events = 0
  let full = false
  return {
    async *days(span, memory) {
      const { from, before } = span
      if (memory === null) {
        if (full || before > through) yield* source.days(span, freshTranslation())
        else yield* keptOf(kept, before)
        return
      }
      const goesOn = !full && from === through
      for await (const day of source.days(span, memory)) {
        if (goesOn && !full) {
          events += day.events.length
          full = events > mostEvents
          if (full) kept.length = 0
          else kept.push(day)
          through = day.day + 1
        }
        yield day
      }
      if (goesOn) through = before
    },
  }
}

function* keptOf(days: readonly ShopDay[], before: number): Generator<ShopDay> {
  for (const one of days) {
    if (one.day >= before) return
    yield one
  }
}
