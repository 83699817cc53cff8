import { sayCount, sayHardness, sayNumber } from '@sumpbook/fluid'
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
      <h2 id="minerals">Minerals</h2>
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
      : `With nothing done ${sayNumber(last.hardness.mean, 0, reader)} ppm in ${sayCount(last.days, 'day', 'days')}.`,
    high === null ? '' : `Its limit is ${sayNumber(high, 0, reader)} ppm.`,
    isRead ? '' : 'Nobody has read it yet: it is reckoned from the waters poured.',
  ]
    .filter((sentence) => sentence !== '')
    .join(' ')
}
