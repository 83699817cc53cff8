import { say } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { putEntry } from '../api/client.ts'
import { asSetUp } from '../api/queries.ts'
import type { Book } from '../api/types.ts'
import { setupEntry } from '../entry/entries.ts'
import { stampNow } from '../entry/this-device.ts'
import { shopUnits } from '../say/units.ts'
import { changeOf } from './change-of.ts'
import { SaveRow } from './save-row.tsx'
import { readShifts, ShopFields, type ShopTexts, shopFaults, usualEveryDays, usualShifts } from './shop-form.tsx'
import { useSaving } from './use-saving.ts'

/** The shop's name, zone, units and rules in a line, and the form that changes them. */
export function ShopItself({ book }: { book: Book }) {
  const { name, timeZone, units, readEveryDays = usualEveryDays } = asSetUp(book.shop)
  const shifts = book.shop.shifts?.join(', ') ?? usualShifts
  const [texts, setTexts] = useState<ShopTexts | null>(null)
  const saving = useSaving()
  if (texts === null) {
    return (
      <div class="thing-line">
        <strong>{name === '' ? say('No name yet') : name}</strong>
        <span class="quiet">
          {timeZone} · {say(shopUnits[units].volumeName)} ·{' '}
          {say('every sump read again after {days, plural, =1 {a day} other {# days}}', { days: readEveryDays })}
        </span>
        <button
          type="button"
          class="plain"
          onClick={() => setTexts({ name, timeZone, units, readEveryDays, shiftsText: shifts })}
        >
          {say('Change')}
        </button>
      </div>
    )
  }
  const faults = saving.isTried ? shopFaults(texts) : {}
  const save = async () => {
    saving.setTried(true)
    if (Object.keys(shopFaults(texts)).length > 0) return
    // A rule that nobody set stays unset as long as it is the usual one.
    const shop = { readEveryDays: usualEveryDays, shifts: [usualShifts], ...asSetUp(book.shop) }
    const { shiftsText = usualShifts, ...rest } = texts
    const change = changeOf(
      { id: 'shop', ...shop },
      { ...rest, name: rest.name.trim(), shifts: readShifts(shiftsText) },
    )
    if (change !== null) {
      const isDone = await saving.put(() =>
        putEntry(setupEntry({ kind: 'shop', id: 'shop' }, change.changes, change.was, stampNow())),
      )
      if (!isDone) return
    }
    setTexts(null)
  }
  return (
    <form
      class="thing-edit"
      aria-label={say('The shop')}
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        void save()
      }}
    >
      <ShopFields shop={texts} faults={faults} change={setTexts} />
      <SaveRow saving={saving} cancel={() => setTexts(null)} />
    </form>
  )
}
