import { say } from '@sumpbook/fluid'
import { useRef, useState } from 'preact/hooks'
import { useLocation } from 'wouter-preact'
import { OutOfReach, putEntry, Refusal } from '../api/client.ts'
import { asSetUp, refresh } from '../api/queries.ts'
import type { Book, Entry } from '../api/types.ts'
import { setupEntry } from '../entry/entries.ts'
import { stampNow } from '../entry/this-device.ts'
import { ShopFields, shopFaults, shopHere } from '../shop/shop-form.tsx'
import {
  type Faults,
  faultsAtFields,
  firstFields,
  idFor,
  readFields,
  type Texts,
  thingFrom,
} from '../shop/thing-fields.ts'
import { ThingFields } from '../shop/thing-form.tsx'
import '../shop/shop.css'
import './begin.css'

type Part = 'fluid' | 'water' | 'sump' | 'container'
const nothing: Texts = {}

/** The shortest way from nothing to a first recipe: shop, fluid, water, sump, on one page. */
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
  const [refused, setRefused] = useState<{ part: Part | 'shop'; faults: Faults; rest: string[] } | null>(null)
  // What the book has taken already, by what it said: a second try writes only what is new in it.
  const taken = useRef(new Map<string, string>())

  const read = (part: Part) => readFields(texts[part], firstFields[part], shop.units)
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
        const { at, rest } = faultsAtFields(errors, part === 'shop' ? [] : firstFields[part])
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
      requestAnimationFrame(() => document.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus())
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
    } finally {
      setBusy(false)
    }
  }

  const fieldsOf = (part: Part) => (
    <ThingFields
      fields={firstFields[part]}
      texts={texts[part]}
      faults={faultsOf(part)}
      units={shop.units}
      change={(own) => setTexts({ ...texts, [part]: own })}
    />
  )
  return (
    <form class="begin-form" aria-label={say('Begin with my shop')} noValidate onSubmit={(event) => void submit(event)}>
      <h1>{say('Begin with my shop')}</h1>
      <p class="lede">
        {say(
          'Only names are needed now; whatever else is missing is asked for when a recipe needs it. All of it can be changed under Shop.',
        )}
      </p>
      <section aria-labelledby="part-shop">
        <h2 id="part-shop">{say('The shop')}</h2>
        <ShopFields
          shop={shop}
          faults={isTried ? shopFaults(shop) : {}}
          change={(next) => setShop({ ...asSetUp(book.shop), ...next })}
        />
      </section>
      <section aria-labelledby="part-fluid">
        <h2 id="part-fluid">{say('The first fluid')}</h2>
        {fieldsOf('fluid')}
      </section>
      <section aria-labelledby="part-water">
        <h2 id="part-water">{say('The water it is topped up with')}</h2>
        {fieldsOf('water')}
      </section>
      <section aria-labelledby="part-sump">
        <h2 id="part-sump">{say('The first sump')}</h2>
        {fieldsOf('sump')}
      </section>
      <section aria-labelledby="part-container">
        <h2 id="part-container">{say('The bucket, if pours are measured in one')}</h2>
        {fieldsOf('container')}
      </section>
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
