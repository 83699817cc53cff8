import { say } from '@sumpbook/fluid'
import { useRef, useState } from 'preact/hooks'
import { Link, useLocation } from 'wouter-preact'
import { OutOfReach, putEntry, Refusal } from '../api/client.ts'
import { asSetUp, refresh } from '../api/queries.ts'
import type { Book, Entry } from '../api/types.ts'
import { setupEntry } from '../entry/entries.ts'
import { stampNow } from '../entry/this-device.ts'
import { enterToNext } from '../fields/enter-to-next.ts'
import { showFirstFault } from '../fields/show-first-fault.ts'
import { firstDayFields, firstFields } from '../shop/all-fields.ts'
import { faultsAtFields } from '../shop/faults-at-fields.ts'
import { idFor } from '../shop/id-for.ts'
import { readFields } from '../shop/read-fields.ts'
import { ShopFields, shopFaults, shopHere, TimeZoneField } from '../shop/shop-form.tsx'
import type { Faults, Texts } from '../shop/thing-field.ts'
import { ThingFields } from '../shop/thing-fields.tsx'
import { thingFrom } from '../shop/thing-from.ts'
import '../shop/shop.css'
import './begin.css'

type Part = 'fluid' | 'water' | 'sump' | 'container'
const nothing: Texts = {}

/** The shortest way from nothing to a first recipe: shop, fluid, sump, on one page; what can wait is folded under them. */
export function BeginShop({ book }: { book: Book }) {
  const [, go] = useLocation()
  const [shop, setShop] = useState(() => (book.shop.name === '' ? shopHere() : asSetUp(book.shop)))
  const [texts, setTexts] = useState<Record<Part, Texts>>({
    fluid: nothing,
    water: nothing,
    sump: nothing,
    container: nothing,
  })
  const [isTried, setTried] = useState(false)
  const [isBusy, setBusy] = useState(false)
  const [wasEmpty] = useState(book.empty)
  const [refused, setRefused] = useState<{ part: Part | 'shop'; faults: Faults; rest: string[] } | null>(null)
  // What the book has taken already, by what it said: a second try writes only what is new in it.
  const taken = useRef(new Map<string, string>())

  const read = (part: Part) => readFields(texts[part], firstDayFields[part], shop.units)
  const isUsed = (part: Part) =>
    part === 'fluid' || part === 'sump' || Object.values(texts[part]).some((text) => text.trim() !== '')
  const faultsOf = (part: Part): Faults => {
    const own = isUsed(part) ? read(part) : { values: {} }
    if (isTried && 'faults' in own) return own.faults
    return refused?.part === part ? refused.faults : {}
  }

  const write = async (
    part: Part | 'shop',
    about: Parameters<typeof setupEntry>[0],
    changes: Record<string, unknown>,
  ) => {
    const said = JSON.stringify([about, changes])
    if (taken.current.get(part) === said) return
    const entry: Entry = setupEntry(about, changes, null, stampNow())
    try {
      await putEntry(entry)
      taken.current.set(part, said)
    } catch (error) {
      if (error instanceof Refusal) {
        const errors = error.problem.errors ?? []
        const { at, rest } = faultsAtFields(errors, part === 'shop' ? [] : firstDayFields[part])
        setRefused({ part, faults: at, rest: errors.length === 0 ? [error.message] : rest })
      } else if (error instanceof OutOfReach) {
        setRefused({
          part,
          faults: {},
          rest: [say('The book is out of reach just now. What you typed is still here: try again.')],
        })
      }
      throw error
    }
  }

  const submit = async (event: Event) => {
    event.preventDefault()
    setTried(true)
    setRefused(null)
    const parts = (['fluid', 'water', 'container', 'sump'] as const)
      .filter(isUsed)
      .map((part) => ({ part, read: read(part) }))
    if (Object.keys(shopFaults(shop)).length > 0 || parts.some((each) => 'faults' in each.read)) {
      requestAnimationFrame(showFirstFault)
      return
    }
    setBusy(true)
    try {
      await write(
        'shop',
        { kind: 'shop', id: 'shop' },
        { name: shop.name.trim(), timeZone: shop.timeZone, units: shop.units },
      )
      const ids = new Map<Part, string>()
      for (const { part, read: own } of parts) {
        if ('faults' in own) continue
        const thing = thingFrom(own.values)
        const id = idFor(String(thing.name), new Set(), part)
        ids.set(part, id)
        await write(
          part,
          { kind: part, id },
          part === 'sump' ? { ...thing, fluid: ids.get('fluid')!, order: 1 } : thing,
        )
      }
      await refresh()
      go(`/round/${encodeURIComponent(ids.get('sump')!)}`)
    } catch (error) {
      if (!(error instanceof Refusal || error instanceof OutOfReach)) throw error
      requestAnimationFrame(showFirstFault)
    } finally {
      setBusy(false)
    }
  }

  const ofShop = {
    shop,
    faults: isTried ? shopFaults(shop) : {},
    change: (next: typeof shop) => setShop({ ...asSetUp(book.shop), ...next }),
  }
  const fieldsOf = (part: Part, fields: keyof typeof firstFields, enter?: 'next' | 'go') => (
    <ThingFields
      fields={firstFields[fields]}
      texts={texts[part]}
      faults={faultsOf(part)}
      units={shop.units}
      change={(own) => setTexts((all) => ({ ...all, [part]: own }))}
      {...(enter === undefined ? {} : { enter })}
    />
  )
  return (
    <form
      class="begin-form"
      aria-label={say('Begin with my shop')}
      noValidate
      onKeyDown={enterToNext}
      onSubmit={(event) => void submit(event)}
    >
      <h1>{say('Begin with my shop')}</h1>
      {!wasEmpty && (
        <p class="note">
          {say('This book is no longer empty.')} <Link href="/">{say('Go to Today')}</Link>
        </p>
      )}
      <p class="lede">
        {say(
          'What a first recipe needs. What you do not know yet may stay empty until a recipe needs it; all of it can be changed under Shop.',
        )}
      </p>
      <section aria-labelledby="part-shop">
        <h2 id="part-shop">{say('The shop')}</h2>
        <ShopFields {...ofShop} isFirst />
      </section>
      <section aria-labelledby="part-fluid">
        <h2 id="part-fluid">{say('The first fluid')}</h2>
        {fieldsOf('fluid', 'fluid', 'next')}
        <div class="band-fields">{fieldsOf('fluid', 'band', 'next')}</div>
        {fieldsOf('fluid', 'fluidClass')}
      </section>
      <section aria-labelledby="part-sump">
        <h2 id="part-sump">{say('The first sump')}</h2>
        {fieldsOf('sump', 'sump', 'go')}
      </section>
      <details class="can-wait">
        <summary>{say('Can wait: place, water, bucket, time zone')}</summary>
        {fieldsOf('sump', 'sumpPlace')}
        <h2>{say('The water it is topped up with')}</h2>
        {fieldsOf('water', 'water')}
        <h2>{say('The bucket, if pours are measured in one')}</h2>
        {fieldsOf('container', 'container')}
        <h2>{say('Time zone')}</h2>
        <div class="thing-fields">
          <TimeZoneField {...ofShop} />
        </div>
      </details>
      {refused?.rest.map((sentence) => (
        <p class="fault" role="alert">
          {sentence}
        </p>
      ))}
      <div class="buttons go">
        <button type="submit" class="main" disabled={isBusy}>
          {say('Open the book and take the first reading')}
        </button>
      </div>
    </form>
  )
}
