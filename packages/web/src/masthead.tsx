import { message, say } from '@sumpbook/fluid'
import { useEffect, useRef, useState } from 'preact/hooks'
import { Link, useLocation } from 'wouter-preact'
import { useSession } from './api/queries.ts'
import type { ShopOfBook } from './api/types.ts'
import { QueueState } from './offline/queue-state.tsx'
import { Tongues } from './speech/tongues.tsx'

/** What a phone's bar has room for; what is used on every round comes first. */
const atTheThumb = [
  ['/', message('Today')],
  ['/round', message('Round')],
  ['/sumps', message('Sumps')],
  ['/mixing', message('Mixing')],
] as const
/** Behind "More" on a phone, beside the others on a desk. */
const more = [
  ['/tests', message('Tests')],
  ['/water', message('Water')],
  ['/cleanouts', message('Cleanouts')],
  ['/stock', message('Stock & cost')],
  ['/journal', message('Journal')],
  ['/shop', message('Shop')],
] as const

/** The top of every page: where one is, whose book it is, and whether everything written is saved. */
export function Masthead({ shop }: { shop?: ShopOfBook }) {
  return (
    <header class="masthead">
      <Link href="/" class="mark">
        Sumpbook
        {shop !== undefined && <span class="shop">{shop.name}</span>}
      </Link>
      {shop !== undefined && <Places />}
      {shop === undefined && <Tongues />}
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
        {session.person?.name ?? say('Who is here?')}
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
        {say(name)}
      </Link>
    ))
  return (
    <nav
      ref={nav}
      class="places"
      aria-label={say('Places')}
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
        {say('More')}
      </button>
      <div id="more-places" class={isOpen ? 'rest open' : 'rest'}>
        {links(more)}
        <Tongues />
      </div>
    </nav>
  )
}
