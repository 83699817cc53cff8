import { say } from '@sumpbook/fluid'
import { useEffect, useRef, useState } from 'preact/hooks'
import { putEntry } from '../api/client.ts'
import type { Book, Thing } from '../api/types.ts'
import type { setupEntry } from '../entry/entries.ts'
import { enterToNext } from '../fields/enter-to-next.ts'
import { SelectField } from '../fields/fields.tsx'
import { showFirstFault } from '../fields/show-first-fault.ts'
import { allFields, type FormKind, newSumpFields } from './all-fields.ts'
import { readFields } from './read-fields.ts'
import { SaveRow } from './save-row.tsx'
import type { Texts } from './thing-field.ts'
import { ThingFields } from './thing-fields.tsx'
import { useSaving } from './use-saving.ts'

interface ThingEditProps {
  kind: FormKind
  label: string
  book: Book
  texts: Texts
  fluid: string
  before?: Thing
  save(values: Record<string, unknown>): ReturnType<typeof setupEntry> | null
  close(): void
}

/** The form of one thing, new or there already. */
export function ThingEdit({ kind, label, book, texts: first, fluid: firstFluid, before, save, close }: ThingEditProps) {
  const [texts, setTexts] = useState(first)
  const [fluid, setFluid] = useState(firstFluid)
  const saving = useSaving()
  const { units } = book.shop
  const fields = allFields[kind]
  const read = readFields(texts, fields, units, before)
  const faults = saving.isTried && 'faults' in read ? read.faults : saving.faults(fields)
  const typed = { texts, faults, units, sumps: book.sumpList ?? [], change: setTexts }
  const lacksFluid = kind === 'sump' && fluid === ''
  const form = useRef<HTMLFormElement>(null)
  // Who tapped for this form goes on in it, wherever on the page it opened.
  useEffect(() => form.current?.querySelector<HTMLElement>('input')?.focus(), [])
  const submit = async (event: Event) => {
    event.preventDefault()
    saving.setTried(true)
    if ('faults' in read || lacksFluid) {
      requestAnimationFrame(showFirstFault)
      return
    }
    const entry = save({ ...read.values, ...(kind === 'sump' ? { fluid } : {}) })
    if (entry === null || (await saving.put(() => putEntry(entry)))) close()
  }
  return (
    <form
      ref={form}
      class="thing-edit"
      aria-label={label}
      noValidate
      onKeyDown={enterToNext}
      onSubmit={(event) => void submit(event)}
    >
      {kind === 'sump' && (
        <SelectField
          label={say('Fluid in it')}
          value={fluid}
          onInput={setFluid}
          choices={[['', say('choose')], ...book.fluids.map(({ id, name }) => [id, name] as const)]}
          fault={
            saving.isTried && lacksFluid
              ? book.fluids.length === 0
                ? say('Found none; expected a fluid. Add one under Fluids first.')
                : say('Found nothing; expected one of the fluids.')
              : null
          }
        />
      )}
      {kind === 'sump' && before === undefined ? (
        <>
          <ThingFields fields={newSumpFields.first} {...typed} enter="go" />
          <details class="can-wait">
            <summary>{say('Can wait: place, brim, suction, lines, a band of its own')}</summary>
            <ThingFields fields={newSumpFields.later} {...typed} />
          </details>
        </>
      ) : (
        <ThingFields fields={fields} {...typed} />
      )}
      <SaveRow saving={saving} cancel={close} />
    </form>
  )
}
