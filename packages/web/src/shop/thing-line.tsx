import { say } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import type { Book, Thing } from '../api/types.ts'
import { setupEntry } from '../entry/entries.ts'
import { stampNow } from '../entry/this-device.ts'
import { allFields, type FormKind } from './all-fields.ts'
import { changeOf } from './change-of.ts'
import { sayThing } from './say-thing.ts'
import { textsOf } from './texts-of.ts'
import { ThingEdit } from './thing-edit.tsx'

/** A thing in a line, and the form that changes it. */
export function ThingLine({ kind, thing, book }: { kind: FormKind; thing: Thing; book: Book }) {
  const { units } = book.shop
  const [isOpen, setOpen] = useState(() => location.hash === `#${kind}-${thing.id}`)
  return (
    <div class="thing" id={`${kind}-${thing.id}`}>
      <div class="thing-line">
        <strong>{thing.name}</strong>
        <span class="quiet">{sayThing(kind, thing, book)}</span>
        {!isOpen && (
          <button
            type="button"
            class="plain"
            aria-label={say('Change {name}', { name: thing.name })}
            onClick={() => setOpen(true)}
          >
            {say('Change')}
          </button>
        )}
      </div>
      {isOpen && (
        <ThingEdit
          kind={kind}
          label={thing.name}
          book={book}
          texts={textsOf(thing, allFields[kind], units)}
          fluid={typeof thing.fluid === 'string' ? thing.fluid : ''}
          before={thing}
          save={(values) => {
            const change = changeOf(thing, values)
            return change === null ? null : setupEntry({ kind, id: thing.id }, change.changes, change.was, stampNow())
          }}
          close={() => setOpen(false)}
        />
      )}
    </div>
  )
}
