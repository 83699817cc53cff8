import { message, say } from '@sumpbook/fluid'
import type { ComponentChildren } from 'preact'
import { useEffect } from 'preact/hooks'
import { Link, Redirect, Route, Switch, useLocation } from 'wouter-preact'
import { OutOfReach, Refusal } from './api/client.ts'
import { askAhead, useBook } from './api/queries.ts'
import { type FetchedAhead, later } from './later.tsx'
import { Masthead } from './masthead.tsx'
import { Mishap } from './mishap.tsx'
import { NewVersionLine } from './offline/new-version-line.tsx'
import { OffLineLine } from './offline/off-line-line.tsx'
import { Tongues } from './speech/tongues.tsx'
import { Today } from './today/today.tsx'

const Begin = later(() => import('./begin/begin.tsx').then(({ Begin }) => Begin))
const BeginShop = later(() => import('./begin/begin-shop.tsx').then(({ BeginShop }) => BeginShop))
const BringSheet = later(() => import('./sheet/bring-sheet.tsx').then(({ BringSheet }) => BringSheet))
const Round = later(() => import('./round/round.tsx').then(({ openRound }) => openRound()))
const RoundSheet = later(() => import('./round-sheet/round-sheet.tsx').then(({ RoundSheet }) => RoundSheet))
const Sumps = later(() => import('./sumps/sumps.tsx').then(({ Sumps }) => Sumps))
const Sump = later(() => import('./sumps/sump.tsx').then(({ Sump }) => Sump))
const WhatIsWrong = later(() => import('./why/what-is-wrong.tsx').then(({ WhatIsWrong }) => WhatIsWrong))
const Mixing = later(() => import('./mixing/mixing.tsx').then(({ Mixing }) => Mixing))
const Water = later(() => import('./water/water.tsx').then(({ Water }) => Water))
const Cleanouts = later(() => import('./cleanouts/cleanouts.tsx').then(({ Cleanouts }) => Cleanouts))
const JobSheet = later(() => import('./cleanouts/job-sheet.tsx').then(({ JobSheet }) => JobSheet))
const StockAndCost = later(() => import('./stock/stock-and-cost.tsx').then(({ StockAndCost }) => StockAndCost))
const Journal = later(() => import('./journal/journal.tsx').then(({ Journal }) => Journal))
const EntryOf = later(() => import('./journal/entry-page.tsx').then(({ EntryOf }) => EntryOf))
const Held = later(() => import('./journal/held.tsx').then(({ Held }) => Held))
const People = later(() => import('./people/people.tsx').then(({ People }) => People))
const Account = later(() => import('./people/account.tsx').then(({ Account }) => Account))
const SwitchPerson = later(() => import('./people/switch-person.tsx').then(({ SwitchPerson }) => SwitchPerson))
const Door = later(() => import('./people/door.tsx').then(({ Door }) => Door))
const Labels = later(() => import('./labels/labels.tsx').then(({ Labels }) => Labels))
const Tests = later(() => import('./tests/tests.tsx').then(({ Tests }) => Tests))
const GuidancePage = later(() => import('./guidance/guidance-page.tsx').then(({ GuidancePage }) => GuidancePage))
const AdditivesPage = later(() => import('./doses/additives-page.tsx').then(({ AdditivesPage }) => AdditivesPage))
const LanguagePage = later(() => import('./speech/language-page.tsx').then(({ LanguagePage }) => LanguagePage))
const Shop = later(() => import('./shop/shop.tsx').then(({ Shop }) => Shop))

/** Pages by the first word of their address, with what else is asked of the book for each. */
const placesAhead: Readonly<Record<string, FetchedAhead>> = {
  round: Round,
  sumps: Sumps,
  mixing: Mixing,
  water: Water,
  cleanouts: Cleanouts,
  stock: StockAndCost,
  tests: Tests,
  journal: Journal,
  shop: Shop,
}

/** Where the app is opened at a place, the book, the place's code and its answers are fetched at once: none of them waits for another. */
export function fetchAhead(place: string): void {
  const [, first = '', second] = place.split('/')
  askAhead.book()
  if (first === 'sumps' && second !== undefined) {
    Sump.fetchAhead()
    askAhead.sump(decodeURIComponent(second))
    return
  }
  placesAhead[first]?.fetchAhead()
  if (first === '' || first === 'round') askAhead.today()
  if (first === 'round' || first === 'sumps' || first === 'journal') askAhead.sumps()
}

export function App() {
  const book = useBook()
  const [place] = useLocation()
  useEffect(() => {
    document.title = titleOf(place)
    if (location.hash === '') scrollTo(0, 0)
  }, [place])
  const isAtDoor = book.error instanceof Refusal && book.error.status === 401
  // Who cannot read what the door says, or what went wrong, still comes to their language.
  if (place === '/language' && (isAtDoor || book.data === undefined)) {
    return (
      <Outside>
        <LanguagePage shop={null} />
        <p>
          <Link href="/">{say('Go to Today')}</Link>
        </p>
      </Outside>
    )
  }
  if (isAtDoor) {
    return (
      <Outside>
        <Door />
      </Outside>
    )
  }
  if (book.data === undefined) {
    return (
      <Outside>
        {book.error === null ? (
          <p class="quiet">{say('Opening the book …')}</p>
        ) : (
          <p class="fault" role="alert">
            {book.error instanceof OutOfReach
              ? say('The book is out of reach: no answer from its server.')
              : book.error.message}{' '}
            <button type="button" onClick={() => void book.refetch()}>
              {say('Try again')}
            </button>
          </p>
        )}
      </Outside>
    )
  }
  const isBegin = place.startsWith('/begin')
  if (book.data.empty && !isBegin && place !== '/language') return <Redirect to="/begin" replace />
  return (
    <div class={place.startsWith('/round/') ? 'shell on-round' : 'shell'}>
      <Masthead {...(isBegin && book.data.empty ? {} : { shop: book.data.shop })} />
      <NewVersionLine />
      <OffLineLine timeZone={book.data.shop.timeZone} />
      <main>
        <Mishap key={place.split('/')[1]}>
          <Switch>
            <Route path="/begin">
              <Begin book={book.data} />
            </Route>
            <Route path="/begin/shop">
              <BeginShop book={book.data} />
            </Route>
            <Route path="/begin/sheet">
              <BringSheet book={book.data} />
            </Route>
            <Route path="/">
              <Today book={book.data} />
            </Route>
            <Route path="/round/:id?">
              {({ id }) => <Round book={book.data} id={id === undefined ? null : decodeURIComponent(id)} />}
            </Route>
            <Route path="/round-sheet">
              <RoundSheet book={book.data} />
            </Route>
            <Route path="/sumps">
              <Sumps book={book.data} />
            </Route>
            <Route path="/sumps/:id">{({ id }) => <Sump book={book.data} id={decodeURIComponent(id)} />}</Route>
            <Route path="/sumps/:id/why">
              {({ id }) => <WhatIsWrong book={book.data} id={decodeURIComponent(id)} />}
            </Route>
            <Route path="/mixing/:part?">{({ part }) => <Mixing book={book.data} part={part ?? null} />}</Route>
            <Route path="/water/:part?">{({ part }) => <Water book={book.data} part={part ?? null} />}</Route>
            <Route path="/cleanouts/sheet/:id">{({ id }) => <JobSheet key={id} book={book.data} id={id} />}</Route>
            <Route path="/cleanouts/:part?">{({ part }) => <Cleanouts book={book.data} part={part ?? null} />}</Route>
            <Route path="/stock/:part?">{({ part }) => <StockAndCost book={book.data} part={part ?? null} />}</Route>
            <Route path="/tests/:part?">{({ part }) => <Tests book={book.data} part={part ?? null} />}</Route>
            <Route path="/journal">
              <Journal book={book.data} />
            </Route>
            <Route path="/journal/held">
              <Held book={book.data} />
            </Route>
            <Route path="/journal/:id">{({ id }) => <EntryOf book={book.data} id={id} />}</Route>
            <Route path="/shop/people">
              <People />
            </Route>
            <Route path="/shop/guidance">
              <GuidancePage book={book.data} />
            </Route>
            <Route path="/shop/account">
              <Account />
            </Route>
            <Route path="/switch">
              <SwitchPerson />
            </Route>
            <Route path="/shop">
              <Shop book={book.data} />
            </Route>
            <Route path="/shop/additives">
              <AdditivesPage book={book.data} />
            </Route>
            <Route path="/language">
              <LanguagePage shop={book.data.shop} />
              {book.data.empty && (
                <p>
                  <Link href="/begin">{say('Back')}</Link>
                </p>
              )}
            </Route>
            <Route path="/shop/labels">
              <Labels book={book.data} />
            </Route>
            <Route path="/shop/sheet">
              <BringSheet book={book.data} />
            </Route>
            <Route>
              <h1>{say('Nothing is kept here')}</h1>
              <p>
                {say('This address leads to no page of the book.')} <a href="/">{say('Go to Today')}</a>
              </p>
            </Route>
          </Switch>
        </Mishap>
      </main>
      <Foot />
    </div>
  )
}

/** Where the book is not open: nothing of it, and no places to go to. */
function Outside({ children }: { children: ComponentChildren }) {
  return (
    <div class="shell">
      <Masthead />
      <main>{children}</main>
      <Foot />
    </div>
  )
}

const Foot = () => (
  <footer class="shell-foot">
    <Tongues />
  </footer>
)

const titles: Record<string, string> = {
  '': message('Today'),
  begin: message('A new book'),
  round: message('Round'),
  'round-sheet': message('Round sheet'),
  sumps: message('Sumps'),
  mixing: message('Mixing'),
  water: message('Water'),
  cleanouts: message('Cleanouts'),
  stock: message('Stock & cost'),
  tests: message('Tests'),
  journal: message('Journal'),
  shop: message('Shop'),
  switch: message('Who is here'),
  language: message('Language, figures, units'),
}

const titleOf = (place: string): string => {
  const title = titles[place.split('/')[1] ?? '']
  return title === undefined ? 'Sumpbook' : `${say(title)} · Sumpbook`
}
