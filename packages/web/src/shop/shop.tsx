import { message, say } from '@sumpbook/fluid'
import { useEffect, useRef, useState } from 'preact/hooks'
import { Link } from 'wouter-preact'
import { exportAddress, OutOfReach, putEntry, Refusal } from '../api/client.ts'
import { asSetUp, refresh, useSumps } from '../api/queries.ts'
import type { Book, Thing } from '../api/types.ts'
import { setupEntry } from '../entry/entries.ts'
import { stampNow } from '../entry/this-device.ts'
import { enterToNext } from '../fields/enter-to-next.ts'
import { SelectField } from '../fields/fields.tsx'
import { showFirstFault } from '../fields/show-first-fault.ts'
import { shopUnits } from '../say/units.ts'
import { BackupPart } from './backups.tsx'
import { sayThing } from './say-thing.ts'
import { readShifts, ShopFields, type ShopTexts, shopFaults, usualEveryDays, usualShifts } from './shop-form.tsx'
import {
  allFields,
  changeOf,
  type Faults,
  type FormKind,
  faultsAtFields,
  idFor,
  newSumpFields,
  nextSump,
  readFields,
  type Texts,
  textsOf,
  thingFrom,
} from './thing-fields.ts'
import { ThingFields } from './thing-form.tsx'
import './shop.css'

const kinds: readonly { kind: FormKind; title: string; add: string }[] = [
  { kind: 'sump', title: message('Sumps'), add: message('Add a sump') },
  { kind: 'fluid', title: message('Fluids'), add: message('Add a fluid') },
  { kind: 'water', title: message('Waters'), add: message('Add a water') },
  { kind: 'container', title: message('Buckets'), add: message('Add a bucket') },
  { kind: 'instrument', title: message('Instruments and strips'), add: message('Add an instrument or strips') },
]

/** The shop and its things. A change is an entry like any other: the past keeps what was true then. */
export function Shop({ book }: { book: Book }) {
  const sumps = useSumps()
  const things: Record<FormKind, readonly Thing[]> = {
    sump: book.sumpList ?? sumps.data?.map(thingOfSump) ?? [],
    fluid: book.fluids,
    water: book.waters,
    container: book.containers,
    instrument: book.instruments ?? [],
  }
  return (
    <div class="shop-page">
      <div class="page-head">
        <h1>{say('Shop')}</h1>
        <span class="quiet">Sumpbook {book.version}</span>
      </div>
      <ShopItself book={book} />
      {kinds.map(({ kind, title, add }) => (
        <section key={kind} class="part" aria-labelledby={`kind-${kind}`}>
          <h2 id={`kind-${kind}`}>{say(title)}</h2>
          {things[kind].map((thing) => (
            <ThingLine key={thing.id} kind={kind} thing={thing} book={book} />
          ))}
          <NewThing kind={kind} add={say(add)} book={book} there={things[kind]} />
          {kind === 'sump' && things.sump.length > 0 && (
            <p>
              <Link href="/shop/labels">{say('Labels with codes to print')}</Link>
            </p>
          )}
        </section>
      ))}
      <section class="part" aria-labelledby="additives-of-the-shop">
        <h2 id="additives-of-the-shop">{say('Additives')}</h2>
        <p class="quiet">{say('Biocides, defoamers and the like, with what their labels allow.')}</p>
        <div class="buttons">
          <Link class="button" href="/shop/additives">
            {say('Additives and their labels')}
          </Link>
        </div>
      </section>
      <section class="part" aria-labelledby="guidance-of-the-shop">
        <h2 id="guidance-of-the-shop">{say('Guidance')}</h2>
        <p class="quiet">
          {say('Whose intervals and limits the shop goes by, its own values, and where the sources differ.')}
        </p>
        <div class="buttons">
          <Link class="button" href="/shop/guidance">
            {say('Guidance and its sources')}
          </Link>
        </div>
      </section>
      <section class="part" aria-labelledby="people-of-the-shop">
        <h2 id="people-of-the-shop">{say('People')}</h2>
        <p class="quiet">{say('Who may do what, phones, shared tablets, and your own account.')}</p>
        <div class="buttons">
          <Link class="button" href="/shop/people">
            {say('People and devices')}
          </Link>
          <Link class="button" href="/shop/account">
            {say('My account')}
          </Link>
          <Link class="button" href="/journal/held">
            {say('Entries that wait')}
          </Link>
        </div>
      </section>
      <section class="part" aria-labelledby="this-device">
        <h2 id="this-device">{say('This device')}</h2>
        <p class="quiet">{say('For this device alone; the shop and what others see stay as they are.')}</p>
        <div class="buttons">
          <Link class="button" href="/language">
            {say('Language, figures, units')}
          </Link>
        </div>
      </section>
      <BackupPart book={book} />
      <section class="part" aria-labelledby="in-and-out">
        <h2 id="in-and-out">{say('In and out')}</h2>
        <p class="quiet">
          {say(
            'A spreadsheet or a book file comes in here; the whole book goes out as one file that any Sumpbook reads.',
          )}
        </p>
        <div class="buttons">
          <Link class="button" href="/shop/sheet">
            {say('Bring a spreadsheet or a book file')}
          </Link>
          <a class="button" href={`${exportAddress}?format=csv`} download="sumpbook.csv">
            {say('Take the log as a table')}
          </a>
          <a class="button" href={exportAddress} download="sumpbook.json">
            {say('Take the whole book out')}
          </a>
        </div>
      </section>
    </div>
  )
}

/** From what a recipe needs, where the book's own words for the sump are not at hand. */
function thingOfSump({
  sump,
  name,
  place,
  order,
  fluid,
  bench,
}: NonNullable<ReturnType<typeof useSumps>['data']>[number]): Thing {
  const known = { place, order, fillVolume: bench.fillVolume, capacity: bench.capacity, minVolume: bench.minVolume }
  return {
    id: sump,
    name,
    fluid: fluid.id,
    ...Object.fromEntries(Object.entries(known).filter(([, value]) => value !== null)),
  }
}

function ShopItself({ book }: { book: Book }) {
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

function ThingLine({ kind, thing, book }: { kind: FormKind; thing: Thing; book: Book }) {
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

function NewThing({ kind, add, book, there }: { kind: FormKind; add: string; book: Book; there: readonly Thing[] }) {
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

function ThingEdit({ kind, label, book, texts: first, fluid: firstFluid, before, save, close }: ThingEditProps) {
  const [texts, setTexts] = useState(first)
  const [fluid, setFluid] = useState(firstFluid)
  const saving = useSaving()
  const { units } = book.shop
  const fields = allFields[kind]
  const read = readFields(texts, fields, units, before)
  const faults = saving.isTried && 'faults' in read ? read.faults : saving.faults(fields)
  const typed = { texts, faults, units, change: setTexts }
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

/** One form on its way to the book: what was said against it, and whether it is under way. */
export function useSaving() {
  const [isTried, setTried] = useState(false)
  const [isBusy, setBusy] = useState(false)
  const [error, setError] = useState<Error | null>(null)
  const errors = error instanceof Refusal ? (error.problem.errors ?? []) : []
  return {
    isTried,
    setTried,
    isBusy,
    faults: (fields: Parameters<typeof faultsAtFields>[1]): Faults => faultsAtFields(errors, fields).at,
    /** What has no field here. */
    rest: (error === null
      ? []
      : error instanceof OutOfReach
        ? [say('The book is out of reach just now: nothing was written. Try again.')]
        : errors.length === 0
          ? [error.message]
          : errors.map(({ pointer, found, expected }) =>
              say('{pointer}: found {found}, expected {expected}', {
                pointer: pointer.replace(/^\/changes\//, ''),
                found,
                expected,
              }),
            )) as string[],
    /** @returns whether the book took it */
    async put(send: () => Promise<unknown>): Promise<boolean> {
      setBusy(true)
      setError(null)
      try {
        await send()
        await refresh()
        return true
      } catch (caught) {
        if (!(caught instanceof Refusal || caught instanceof OutOfReach)) throw caught
        setError(caught)
        return false
      } finally {
        setBusy(false)
      }
    },
  }
}

function SaveRow({ saving, cancel }: { saving: ReturnType<typeof useSaving>; cancel(): void }) {
  return (
    <>
      {saving.rest.map((sentence) => (
        <p class="fault" role="alert">
          {sentence}
        </p>
      ))}
      <div class="buttons">
        <button type="submit" class="main" disabled={saving.isBusy}>
          {say('Write it down')}
        </button>
        <button type="button" class="plain" onClick={cancel}>
          {say('Back')}
        </button>
      </div>
    </>
  )
}
