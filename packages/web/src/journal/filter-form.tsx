import { useEffect, useState } from 'preact/hooks'
import type { SumpNow } from '../api/types.ts'
import { DayField, SelectField, TextField } from '../fields/fields.tsx'
import { inWalkingOrder } from '../standing/walking-order.ts'
import { type Asked, askedNothing, asksForSome } from './asked.ts'
import { type KindGroup, kindGroups } from './kind-groups.ts'

interface FilterFormProps {
  asked: Asked
  sumps: readonly SumpNow[]
  /** Who has written, for the list of suggestions. */
  people: readonly string[]
  /** The last day one may ask for. */
  today: string
  look(asked: Asked): void
}

/** What of the journal is looked for. A choice counts at once; words, names and days with the button, so that no letter asks anew. */
export function FilterForm({ asked, sumps, people, today, look }: FilterFormProps) {
  const [typed, setTyped] = useState(asked)
  useEffect(() => setTyped(asked), [asked])
  const type = (part: Partial<Asked>) => setTyped({ ...typed, ...part })
  const isTurned = typed.from !== '' && typed.to !== '' && typed.to < typed.from
  return (
    <form
      class="journal-filter"
      aria-label="Look for"
      onSubmit={(event) => {
        event.preventDefault()
        if (!isTurned) look(typed)
      }}
    >
      <SelectField
        label="Sump"
        value={typed.sump}
        onInput={(sump) => look({ ...typed, sump })}
        choices={[
          ['', 'All, and the shop'],
          ...sumps.toSorted(inWalkingOrder).map(({ sump, name }) => [sump, name] as const),
        ]}
      />
      <SelectField
        label="What"
        value={typed.what}
        onInput={(what) => look({ ...typed, what: what as KindGroup | '' })}
        choices={[['', 'Everything'], ...Object.entries(kindGroups).map(([group, [words]]) => [group, words] as const)]}
      />
      <TextField label="Who" value={typed.by} onInput={(by) => type({ by })} list={people} />
      <TextField label="Words, notes included" value={typed.words} onInput={(words) => type({ words })} />
      <DayField label="From" value={typed.from} onInput={(from) => type({ from })} max={today} />
      <DayField
        label="To, included"
        value={typed.to}
        onInput={(to) => type({ to })}
        fault={isTurned ? `Found ${typed.to}; expected a day from ${typed.from} on.` : null}
      />
      <div class="buttons">
        <button type="submit" class="main">
          Look
        </button>
        {asksForSome(asked) && (
          <button type="button" class="plain" onClick={() => look(askedNothing)}>
            Show everything again
          </button>
        )}
      </div>
    </form>
  )
}
