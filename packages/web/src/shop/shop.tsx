import { message, say } from '@sumpbook/fluid'
import { Link } from 'wouter-preact'
import { exportAddress } from '../api/client.ts'
import { useSumps } from '../api/queries.ts'
import type { Book, Thing } from '../api/types.ts'
import type { FormKind } from './all-fields.ts'
import { BackupPart } from './backups.tsx'
import { NewThing } from './new-thing.tsx'
import { ShopItself } from './shop-itself.tsx'
import { ThingLine } from './thing-line.tsx'
import { thingOfSump } from './thing-of-sump.ts'
import './shop.css'

const kinds: readonly { kind: FormKind; title: string; add: string }[] = [
  { kind: 'sump', title: message('Sumps'), add: message('Add a sump') },
  { kind: 'fluid', title: message('Fluids'), add: message('Add a fluid') },
  { kind: 'water', title: message('Waters'), add: message('Add a water') },
  { kind: 'container', title: message('Buckets'), add: message('Add a bucket') },
  { kind: 'instrument', title: message('Instruments and strips'), add: message('Add an instrument or strips') },
  { kind: 'meter', title: message('Hose meters'), add: message('Add a hose meter') },
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
    meter: book.meters ?? [],
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
