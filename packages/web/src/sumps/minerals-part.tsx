import { say, sayHardness, sayNumber } from '@sumpbook/fluid'
import type { Book, Outlook, SumpPage } from '../api/types.ts'
import { readerOf } from '../say/units.ts'
import { drawnFrom } from './concentration-part.tsx'
import { daysUntilDry, HardnessCourse } from './course.tsx'
import { hardnessSaid } from './fan-layout.ts'

interface MineralsPartProps {
  sump: SumpPage
  outlook: Outlook
  shop: Book['shop']
  days: number
}

/** Its hardness, past and ahead, with its limit. */
export function MineralsPart({ sump, outlook, shop, days }: MineralsPartProps) {
  return (
    <section aria-labelledby="minerals" class="part">
      <h2 id="minerals">{say('Minerals')}</h2>
      <p>{mineralWords(sump, outlook, shop.units)}</p>
      <HardnessCourse sump={sump} outlook={outlook} from={drawnFrom(sump, outlook, days)} timeZone={shop.timeZone} />
    </section>
  )
}

/** Hardness now and ahead, its limit, and whether it was ever read. */
function mineralWords({ history, bench }: SumpPage, outlook: Outlook, units: Book['shop']['units']): string {
  const reader = readerOf(units)
  const { now, limits } = outlook
  const last = daysUntilDry(outlook, bench).at(-1)
  const high = limits.hardness?.high ?? null
  const isRead = history.some((entry) => hardnessSaid(entry) !== null && !entry.withdrawn)
  return [
    `${sayHardness(now.hardness, reader)}.`,
    last === undefined
      ? ''
      : say('With nothing done {hardness} ppm in {days, plural, one {# day} other {# days}}.', {
          hardness: sayNumber(last.hardness.mean, 0, reader),
          days: last.days,
        }),
    high === null ? '' : say('Its limit is {limit} ppm.', { limit: sayNumber(high, 0, reader) }),
    isRead ? '' : say('Nobody has read it yet: it is reckoned from the waters poured.'),
  ]
    .filter((sentence) => sentence !== '')
    .join(' ')
}
