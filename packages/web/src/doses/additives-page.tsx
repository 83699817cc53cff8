import { say, sayCautions } from '@sumpbook/fluid'
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
import { idFor } from '../shop/id-for.ts'
import { SmallForm } from '../stock/small-form.tsx'
import {
  type AdditiveThing,
  additiveFields,
  additiveFrom,
  additiveTexts,
  figure,
  labelFault,
  sayAdditiveKind,
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
    const label = (entry: Entry) => labelOf(entry, say('The shop'), readerOf(shop.units))
    if (await writing.write(entries.map((entry) => ({ entry, label: label(entry) })))) setOpen(null)
  }
  const form = (one: AdditiveThing | null) => (
    <SmallForm
      title={one === null ? say('A new additive') : say('The label of {name}', { name: one.name })}
      fields={additiveFields()}
      first={additiveTexts(one)}
      units={shop.units}
      today={dayIn(new Date().toISOString(), shop.timeZone)}
      submitWords={say('Keep it')}
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
        <h1>{say('Additives')}</h1>
        <span class="quiet">
          <Link href="/shop">{say('Shop')}</Link>
        </span>
      </div>
      <p class="intro">
        {say(
          'Biocides, defoamers and the like, with what their labels allow. Type it from the label in your hand: without it there is no dose, and never more than it says.',
        )}
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
                {say('Change it')}
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
                {say('No longer used')}
              </button>
            </div>
          )}
        </section>
      ))}
      {open === '' ? (
        form(null)
      ) : (
        <button type="button" class="main" onClick={() => setOpen('')}>
          {say('Add an additive')}
        </button>
      )}
    </div>
  )
}

/** "biocide · 1 to 2 mL/L, 7 days apart · label of 2025, table 2" */
function labelWords({ kind, dose, minimumDays, most, label }: AdditiveThing): string {
  return [
    sayAdditiveKind(kind),
    dose === undefined
      ? say('its dose is not typed in: there is none')
      : say('{low} to {high} {unit}', { low: figure(dose.low), high: figure(dose.high), unit: dose.unit }),
    minimumDays === undefined
      ? ''
      : say('{days, plural, one {# days apart} other {# days apart}}', { days: minimumDays }),
    most === undefined
      ? ''
      : say('{days, plural, one {at most {amount} {unit} in # days} other {at most {amount} {unit} in # days}}', {
          amount: figure(most.amount),
          unit: dose?.unit ?? '',
          days: most.days,
        }),
    label ?? '',
  ]
    .filter((part) => part !== '')
    .join(' · ')
}
