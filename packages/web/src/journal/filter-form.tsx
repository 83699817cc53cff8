import { say } from '@sumpbook/fluid'
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
  const isAhead = typed.from > today
  return (
    <form
      class="journal-filter"
      aria-label={say('Look for')}
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        if (!isTurned && !isAhead) look(typed)
      }}
    >
      <SelectField
        label={say('Sump')}
        value={typed.sump}
        onInput={(sump) => look({ ...typed, sump })}
        choices={[
          ['', say('All, and the shop')],
          ...sumps.toSorted(inWalkingOrder).map(({ sump, name }) => [sump, name] as const),
        ]}
      />
      <SelectField
        label={say('What')}
        value={typed.what}
        onInput={(what) => look({ ...typed, what: what as KindGroup | '' })}
        choices={[
          ['', say('Everything')],
          ...Object.entries(kindGroups).map(([group, [choice]]) => [group, say(choice)] as const),
        ]}
      />
      <TextField label={say('Who')} value={typed.by} onInput={(by) => type({ by })} list={people} />
      <TextField label={say('Words, notes included')} value={typed.words} onInput={(words) => type({ words })} />
      <DayField
        label={say('From')}
        value={typed.from}
        onInput={(from) => type({ from })}
        max={today}
        fault={isAhead ? { found: typed.from, expected: say('a day up to today') } : null}
      />
      <DayField
        label={say('To, included')}
        value={typed.to}
        onInput={(to) => type({ to })}
        fault={isTurned ? say('Found {to}; expected a day from {from} on.', { to: typed.to, from: typed.from }) : null}
      />
      <div class="buttons">
        <button type="submit" class="main">
          {say('Look it up')}
        </button>
        {asksForSome(asked) && (
          <button type="button" class="plain" onClick={() => look(askedNothing)}>
            {say('Show everything again')}
          </button>
        )}
      </div>
    </form>
  )
}
