import { useState } from 'preact/hooks'
import type { Book, Thing } from '../api/types.ts'
import { setupEntry } from '../entry/entries.ts'
import { stampNow } from '../entry/this-device.ts'
import type { FormKind } from './all-fields.ts'
import { idFor } from './id-for.ts'
import { nextSump } from './next-sump.ts'
import { ThingEdit } from './thing-edit.tsx'
import { thingFrom } from './thing-from.ts'

/** The button that adds a thing, and the form behind it. */
export function NewThing({
  kind,
  add,
  book,
  there,
}: {
  kind: FormKind
  add: string
  book: Book
  there: readonly Thing[]
}) {
  const [isOpen, setOpen] = useState(() => location.hash === `#new-${kind}`)
  if (!isOpen) {
    return (
      <button type="button" class="add" onClick={() => setOpen(true)}>
        {add}
      </button>
    )
  }
  const taken = new Set(there.map(({ id }) => id))
  return (
    <ThingEdit
      kind={kind}
      label={add}
      book={book}
      {...(kind === 'sump' ? nextSump(there, book.fluids) : { texts: {}, fluid: '' })}
      save={(values) => {
        const thing = thingFrom(values)
        return setupEntry({ kind, id: idFor(String(thing.name), taken, kind) }, thing, null, stampNow())
      }}
      close={() => setOpen(false)}
    />
  )
}
