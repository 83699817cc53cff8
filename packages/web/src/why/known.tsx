import { say, sayFinding, sayList, sayRead } from '@sumpbook/fluid'
import type { SumpDiagnosis, Units } from '../api/types.ts'
import { readerOf } from '../say/units.ts'
import { sayWhenShort } from '../say/when.ts'
import { saySeverity } from './severity.ts'

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
      <h2 id="weighed">{say('Weighed with it')}</h2>
      {isNothing && <p class="quiet">{say('Nothing was read of this charge yet.')}</p>}
      <ul class="plain-list">
        {concentration !== undefined && (
          <li>{say('{reading}, by the records', { reading: sayRead('concentration', concentration, reader) })}</li>
        )}
        {volume !== undefined && (
          <li>{say('{reading}, by the records', { reading: sayRead('volume', volume, reader) })}</li>
        )}
        {read.map(({ field, text, at, stale }) => (
          <li key={field}>
            {text}, {when(at)}
            {stale && <span class="tag plain">{say('too old to count')}</span>}
          </li>
        ))}
        {observed.map(({ entry, at, signs, notUnderstood, severity, note }) => (
          <li key={entry}>
            {when(at)}:{' '}
            {signs.length + notUnderstood.length === 0
              ? say('all fine')
              : sayList([
                  ...signs.map(sayFinding),
                  ...notUnderstood.map((word) => say('“{word}” (not understood)', { word })),
                ])}
            {severity !== null && `, ${saySeverity(severity)}`}
            {note !== null && ` – ${note}`}
          </li>
        ))}
      </ul>
    </section>
  )
}
