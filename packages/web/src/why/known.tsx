import { sayList, sayRead } from '@sumpbook/fluid'
import type { SumpDiagnosis, Units } from '../api/types.ts'
import { readerOf } from '../say/units.ts'
import { sayWhenShort } from '../say/when.ts'

/** What was weighed beside the signs: readings with their age, what the estimate says, what was seen before. */
export function Known({
  diagnosis: { read, observed, symptoms },
  units,
  timeZone,
  now,
}: {
  diagnosis: SumpDiagnosis
  units: Units
  timeZone: string
  now: string
}) {
  const reader = readerOf(units)
  const { concentration, volume } = symptoms.readings
  const when = (at: string) => sayWhenShort(at, { timeZone, now })
  const isNothing = read.length === 0 && observed.length === 0 && concentration === undefined && volume === undefined
  return (
    <section aria-labelledby="weighed" class="part">
      <h2 id="weighed">Weighed with it</h2>
      {isNothing && <p class="quiet">Nothing was read of this charge yet.</p>}
      <ul class="plain-list">
        {concentration !== undefined && <li>{sayRead('concentration', concentration, reader)}, by the records</li>}
        {volume !== undefined && <li>{sayRead('volume', volume, reader)}, by the records</li>}
        {read.map(({ field, text, at, stale }) => (
          <li key={field}>
            {text}, {when(at)}
            {stale && <span class="tag plain">too old to count</span>}
          </li>
        ))}
        {observed.map(({ entry, at, signs, notUnderstood, severity, note }) => (
          <li key={entry}>
            {when(at)}:{' '}
            {signs.length + notUnderstood.length === 0
              ? 'all fine'
              : sayList([...signs, ...notUnderstood.map((word) => `“${word}” (not understood)`)])}
            {severity !== null && `, ${severity}`}
            {note !== null && ` – ${note}`}
          </li>
        ))}
      </ul>
    </section>
  )
}
