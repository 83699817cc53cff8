import { useEffect, useRef, useState } from 'preact/hooks'
import { Link, useLocation } from 'wouter-preact'
import { useSession } from './api/queries.ts'
import type { ShopOfBook } from './api/types.ts'
import { flush, outbox, useWaiting } from './entry/book-outbox.ts'
import type { Waiting } from './entry/outbox.ts'

/** What a phone's bar has room for; what is used on every round comes first. */
const atTheThumb = [
  ['/', 'Today'],
  ['/round', 'Round'],
  ['/sumps', 'Sumps'],
  ['/mixing', 'Mixing'],
] as const
/** Behind "More" on a phone, beside the others on a desk. */
const more = [
  ['/water', 'Water'],
  ['/stock', 'Stock & cost'],
  ['/journal', 'Journal'],
  ['/shop', 'Shop'],
] as const

/** The top of every page: where one is, whose book it is, and whether everything written is saved. */
export function Masthead({ shop }: { shop?: ShopOfBook }) {
  return (
    <header class="masthead">
      <Link href="/" class="mark">
        Sumpbook
      </Link>
      {shop !== undefined && (
        <>
          <Places />
          <span class="shop">{shop.name}</span>
        </>
      )}
      {shop !== undefined && <QueueState />}
      {shop !== undefined && <Who />}
    </header>
  )
}

/** Who is signed in; on a shared device the way to say so. Nothing where no accounts are needed. */
function Who() {
  const { data: session } = useSession()
  if (session === undefined || !session.accounts) return null
  if (session.device?.kind === 'shared') {
    return (
      <Link href="/switch" class="who">
        {session.person?.name ?? 'Who is here?'}
      </Link>
    )
  }
  return session.person === null ? null : (
    <Link href="/shop/account" class="who">
      {session.person.name}
    </Link>
  )
}

function Places() {
  const [here] = useLocation()
  const [isOpen, setOpen] = useState(false)
  const nav = useRef<HTMLElement>(null)
  const button = useRef<HTMLButtonElement>(null)
  useEffect(() => setOpen(false), [here])
  useEffect(() => {
    if (!isOpen) return
    const closeOutside = (event: Event) => {
      if (!nav.current!.contains(event.target as Node)) setOpen(false)
    }
    document.addEventListener('pointerdown', closeOutside)
    return () => document.removeEventListener('pointerdown', closeOutside)
  }, [isOpen])
  const isHere = (place: string) => (place === '/' ? here === '/' : here === place || here.startsWith(`${place}/`))
  const links = (places: readonly (readonly [string, string])[]) =>
    places.map(([place, name]) => (
      <Link href={place} aria-current={isHere(place) ? 'page' : undefined} onClick={() => setOpen(false)}>
        {name}
      </Link>
    ))
  return (
    <nav
      ref={nav}
      class="places"
      aria-label="Places"
      onKeyDown={({ key }) => {
        if (key !== 'Escape' || !isOpen) return
        setOpen(false)
        button.current!.focus()
      }}
    >
      {links(atTheThumb)}
      <button
        ref={button}
        type="button"
        class={more.some(([place]) => isHere(place)) ? 'more here' : 'more'}
        aria-expanded={isOpen}
        aria-controls="more-places"
        onClick={() => setOpen(!isOpen)}
      >
        More
      </button>
      <div id="more-places" class={isOpen ? 'rest open' : 'rest'}>
        {links(more)}
      </div>
    </nav>
  )
}

/** "all saved", or how many entries still wait, with the list behind it. */
export function QueueState() {
  const waiting = useWaiting()
  const [isOpen, setOpen] = useState(false)
  const refused = waiting.filter(({ problem }) => problem !== null).length
  if (waiting.length === 0) {
    return (
      <span class="state" role="status">
        all saved
      </span>
    )
  }
  const words = refused > 0 ? `${refused} not taken` : `${waiting.length} waiting to send`
  return (
    <span class="state" role="status">
      <button type="button" aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
        {words}
      </button>
      {isOpen && <Queue waiting={waiting} close={() => setOpen(false)} />}
    </span>
  )
}

function Queue({ waiting, close }: { waiting: readonly Waiting[]; close(): void }) {
  return (
    <section class="queue sheet-over" aria-label="Waiting to send">
      <h3>Not in the book yet</h3>
      <p class="quiet">Kept on this device until the book has taken it.</p>
      <ul>
        {waiting.map(({ entry, label, problem }) => (
          <li key={entry.id}>
            <strong>{label}</strong>
            {problem === null ? (
              <span class="quiet"> · waiting</span>
            ) : (
              <>
                <div class="fault">
                  {problem.errors?.map(({ pointer, found, expected }) => (
                    <div>
                      {pointer.slice(1)}: found {found}, expected {expected}
                    </div>
                  )) ??
                    problem.detail ??
                    problem.title}
                </div>
                <div class="buttons">
                  {problem.confirmable === true && (
                    <button
                      type="button"
                      onClick={() => {
                        outbox.confirm(entry.id)
                        void flush()
                      }}
                    >
                      It is right, send it
                    </button>
                  )}
                  <button type="button" class="plain" onClick={() => outbox.drop(entry.id)}>
                    Throw it away
                  </button>
                </div>
              </>
            )}
          </li>
        ))}
      </ul>
      <div class="buttons">
        <button type="button" class="main" onClick={() => void flush()}>
          Send now
        </button>
        <button type="button" class="plain" onClick={close}>
          Close
        </button>
      </div>
    </section>
  )
}
