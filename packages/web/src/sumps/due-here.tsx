import { say } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { useToday } from '../api/queries.ts'
import type { Book } from '../api/types.ts'
import { wordsOf } from '../entry/entries.ts'
import { readerOf } from '../say/units.ts'
import { DueLine } from '../today/due.tsx'

/** What is due at this sump beside what is poured: tests, results, upkeep. Nothing where nothing is. */
export function DueHere({ sump, shop }: { sump: string; shop: Book['shop'] }) {
  const { data } = useToday()
  const [said, setSaid] = useState('')
  const reader = readerOf(shop.units)
  const due = data === undefined ? [] : [...data.due, ...(data.later?.due ?? [])].filter((one) => one.sump === sump)
  if (due.length === 0 && said === '') return null
  return (
    <section aria-labelledby="due-here" class="part due-here">
      <h2 id="due-here">{say('Due here')}</h2>
      {due.map((one) => (
        <DueLine
          key={one.key}
          due={one}
          reader={reader}
          time={{ timeZone: shop.timeZone, at: data!.at, shiftEnds: data!.shift.ends }}
          wrote={({ entries }) =>
            setSaid(
              say('Written down: {entries}.', {
                entries: entries.map((entry) => wordsOf(entry, reader)).join(', '),
              }),
            )
          }
        />
      ))}
      <p role="status">{said}</p>
    </section>
  )
}
