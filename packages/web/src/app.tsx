import { useEffect } from 'preact/hooks'
import { Redirect, Route, Switch, useLocation } from 'wouter-preact'
import { OutOfReach, Refusal } from './api/client.ts'
import { useBook } from './api/queries.ts'
import { later } from './later.tsx'
import { Masthead } from './masthead.tsx'
import { Mishap } from './mishap.tsx'
import { NewVersionLine } from './offline/new-version-line.tsx'
import { OffLineLine } from './offline/off-line-line.tsx'
import { Today } from './today/today.tsx'

const Begin = later(() => import('./begin/begin.tsx').then(({ Begin }) => Begin))
const BeginShop = later(() => import('./begin/begin-shop.tsx').then(({ BeginShop }) => BeginShop))
const BringSheet = later(() => import('./sheet/bring-sheet.tsx').then(({ BringSheet }) => BringSheet))
const Round = later(() => import('./round/round.tsx').then(({ Round }) => Round))
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
const Shop = later(() => import('./shop/shop.tsx').then(({ Shop }) => Shop))

export function App() {
  const book = useBook()
  const [place] = useLocation()
  useEffect(() => {
    document.title = titleOf(place)
    if (location.hash === '') scrollTo(0, 0)
  }, [place])
  if (book.error instanceof Refusal && book.error.status === 401) {
    return (
      <div class="shell">
        <Masthead />
        <main>
          <Door />
        </main>
      </div>
    )
  }
  if (book.data === undefined) {
    return (
      <div class="shell">
        <Masthead />
        <main>
          {book.error === null ? (
            <p class="quiet">Opening the book …</p>
          ) : (
            <p class="fault" role="alert">
              {book.error instanceof OutOfReach
                ? 'The book is out of reach: no answer from its server.'
                : book.error.message}{' '}
              <button type="button" onClick={() => void book.refetch()}>
                Try again
              </button>
            </p>
          )}
        </main>
      </div>
    )
  }
  const isBegin = place.startsWith('/begin')
  if (book.data.empty && !isBegin) return <Redirect to="/begin" replace />
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
            <Route path="/shop/labels">
              <Labels book={book.data} />
            </Route>
            <Route path="/shop/sheet">
              <BringSheet book={book.data} />
            </Route>
            <Route>
              <h1>Nothing is kept here</h1>
              <p>
                This address leads to no page of the book. <a href="/">Go to Today</a>
              </p>
            </Route>
          </Switch>
        </Mishap>
      </main>
    </div>
  )
}

const titles: Record<string, string> = {
  '': 'Today',
  begin: 'A new book',
  round: 'Round',
  'round-sheet': 'Round sheet',
  sumps: 'Sumps',
  mixing: 'Mixing',
  water: 'Water',
  cleanouts: 'Cleanouts',
  stock: 'Stock & cost',
  tests: 'Tests',
  journal: 'Journal',
  shop: 'Shop',
  switch: 'Who is here',
}

const titleOf = (place: string): string => {
  const title = titles[place.split('/')[1] ?? '']
  return title === undefined ? 'Sumpbook' : `${title} · Sumpbook`
}
