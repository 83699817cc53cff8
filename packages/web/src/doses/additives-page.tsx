import { sayCautions } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { Link } from 'wouter-preact'
import type { Book, Entry } from '../api/types.ts'
import { labelOf, setupEntry } from '../entry/entries.ts'
import type { Stamp } from '../entry/stamp.ts'
import { stampNow } from '../entry/this-device.ts'
import { useWriting } from '../entry/use-writing.ts'
import { Cautions } from '../parts/cautions.tsx'
import { readerOf } from '../say/units.ts'
import { dayIn } from '../say/when.ts'
import { idFor } from '../shop/thing-fields.ts'
import { SmallForm } from '../stock/small-form.tsx'
import {
  type AdditiveThing,
  additiveFields,
  additiveFrom,
  additiveTexts,
  kindWords,
  labelFault,
} from './additive-texts.ts'
import './doses.css'
import '../shop/shop.css'

/** What the shop adds beside concentrate and water, with what each label allows. */
export function AdditivesPage({ book }: { book: Book }) {
  const [open, setOpen] = useState<string | null>(null)
  const writing = useWriting()
  const { shop } = book
  const additives = (shop.additives ?? []) as readonly AdditiveThing[]
  const changed = (next: readonly AdditiveThing[], stamp: Stamp) => {
    const was = shop.additives === undefined ? null : { additives }
    return setupEntry({ kind: 'shop', id: 'shop' }, { additives: next }, was, stamp)
  }
  const write = async (entries: Entry[]) => {
    const label = (entry: Entry) => labelOf(entry, 'The shop', readerOf(shop.units))
    if (await writing.write(entries.map((entry) => ({ entry, label: label(entry) })))) setOpen(null)
  }
  const form = (one: AdditiveThing | null) => (
    <SmallForm
      title={one === null ? 'A new additive' : `The label of ${one.name}`}
      fields={additiveFields}
      first={additiveTexts(one)}
      units={shop.units}
      today={dayIn(new Date().toISOString(), shop.timeZone)}
      submitWords="Keep it"
      isBusy={writing.isBusy}
      fault={labelFault}
      build={(values, stamp) => {
        const id = one?.id ?? idFor(values.texts.name ?? '', new Set(additives.map((other) => other.id)), 'additive')
        const kept = additiveFrom(values, id)
        const next = one === null ? [...additives, kept] : additives.map((other) => (other.id === id ? kept : other))
        return [changed(next, stamp)]
      }}
      write={(entries) => void write(entries)}
      cancel={() => setOpen(null)}
    />
  )
  return (
    <div class="shop-page">
      <div class="page-head">
        <h1>Additives</h1>
        <span class="quiet">
          <Link href="/shop">Shop</Link>
        </span>
      </div>
      <p class="intro">
        Biocides, defoamers and the like, with what their labels allow. Type it from the label in your hand: without it
        there is no dose, and never more than it says.
      </p>
      <Cautions cautions={sayCautions(['biocideByLabel', 'nitriteWithAmines'])} />
      <p role="status">{writing.said}</p>
      {additives.map((one) => (
        <section key={one.id} class="part" aria-labelledby={`additive-${one.id}`}>
          <h2 id={`additive-${one.id}`}>{one.name}</h2>
          <p>{labelWords(one)}</p>
          {open === one.id ? (
            form(one)
          ) : (
            <div class="buttons">
              <button type="button" onClick={() => setOpen(one.id)}>
                Change it
              </button>
              <button
                type="button"
                class="plain"
                disabled={writing.isBusy}
                onClick={() =>
                  void write([
                    changed(
                      additives.filter(({ id }) => id !== one.id),
                      stampNow(),
                    ),
                  ])
                }
              >
                No longer used
              </button>
            </div>
          )}
        </section>
      ))}
      {open === '' ? (
        form(null)
      ) : (
        <button type="button" class="main" onClick={() => setOpen('')}>
          Add an additive
        </button>
      )}
    </div>
  )
}

/** "biocide · 1 to 2 mL/L, 7 days apart · label of 2025, table 2" */
function labelWords({ kind, dose, minimumDays, most, label }: AdditiveThing): string {
  return [
    kindWords.find(([id]) => id === kind)?.[1] ?? kind,
    dose === undefined ? 'its dose is not typed in: there is none' : `${dose.low} to ${dose.high} ${dose.unit}`,
    minimumDays === undefined ? '' : `${minimumDays} days apart`,
    most === undefined ? '' : `at most ${most.amount} ${dose?.unit ?? ''} in ${most.days} days`,
    label ?? '',
  ]
    .filter((part) => part !== '')
    .join(' · ')
}
