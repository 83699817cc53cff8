import { type Book, inMemory, openBook, openSqliteStore } from '@sumpbook/book'
import type { Entry } from '../../packages/web/src/api/types.ts'
import { type Outbox, openOutbox } from '../../packages/web/src/entry/outbox.ts'
import { isSameBut, sendEntries } from '../../packages/web/src/entry/send-entries.ts'
import { withOffset } from '../../packages/web/src/entry/stamp.ts'
import { uuidMaker } from '../../packages/web/src/entry/uuid.ts'
import type { Waiting } from '../../packages/web/src/entry/waiting.ts'
import { type Chance, chanceOf } from '../estimate/simulate/random.ts'
import { badFetch, fair, type Happened, type Weather } from './network.ts'
import { aloneOf, type Disk, diskOf, Page } from './phone.ts'
import { type VirtualTime, virtualTime } from './virtual-time.ts'

const minute = 60_000
const day = 24 * 60 * minute
/** When a run begins, by the server's clock. */
const beginning = Date.parse('2026-03-02T06:00:00Z')
/** A run is a round of so long, with whatever comes between. */
const roundMs = 12 * minute

export interface Simulated {
  happened: Happened
  written: number
  /** What must not be: empty where all is well. */
  wrong: string[]
}

/** What a phone is in one run. */
interface Phone {
  disk: Disk
  pages: { page: Page; outbox: Outbox }[]
  /** Ahead of the server's clock, ms. */
  ahead: number
  /** What its person was told is kept, as it was then. */
  told: Map<string, Entry>
  /** What its person threw away. */
  thrownAway: Set<string>
  open(): void
}

/** A book that has one sump, for runs that follow each other; ids of different runs differ. */
export async function bookForRuns(now: () => number): Promise<Book> {
  const book = openBook(await openSqliteStore(inMemory), () => new Date(now()))
  const fluid = {
    id: '00000000-0000-7000-8000-00000000000f',
    at: '2026-01-01T00:00:00Z',
    kind: 'setup',
    about: { kind: 'fluid', id: 'blue' },
    changes: { name: 'Blue 40', brixFactor: 1 },
  }
  const sump = {
    ...fluid,
    id: '00000000-0000-7000-8000-0000000000ff',
    about: { kind: 'sump', id: 'mill-7' },
    changes: { name: 'Mill 7', fluid: 'blue', fillVolume: 200, capacity: 250 },
  }
  await book.putMany([fluid, sump])
  return book
}

/** What is held by the open page only says so: that much is not promised. */
const onDevice = (kept: 'device' | 'page') => kept === 'device'

/** The clock of a book that serves many runs. */
export const serverClock = { now: beginning }

/**
 * Two people with a phone each walk a round where the signal is bad: requests and answers are lost, doubled, overtaken; the server fails;
 * pages are killed at any moment, between sending and answer and between answer and note too; disks fill up and empty; clocks are
 * off and are set. At the end the weather is fair and the phones are opened once more. Then each entry that somebody was told is kept must be in the book
 * exactly once and as it was written, or lie on the phone with the book's reason; nothing waits any more, and nothing was called taken that the book
 * does not have.
 *
 * @param isPromised what a person may rely on once it is written
 */
export async function simulate(
  seed: number,
  book: Book,
  isPromised: (kept: 'device' | 'page') => boolean = onDevice,
): Promise<Simulated> {
  const chance = chanceOf(seed)
  const time = virtualTime((now) => {
    serverClock.now = beginning + now
  })
  const happened: Happened = { requests: 0, lost: 0, unheard: 0, doubled: 0, failed: 0, kills: 0, held: 0, refused: 0 }
  const wrong: string[] = []
  let weather: Weather = weatherOf(chance)
  const written = new Map<string, Entry>()
  const inBook = async (ids: readonly string[]) => new Map(await book.store.bodies([...ids]))
  /** What the phone's clock shows: whole milliseconds, as a browser tells them. */
  const clockOf = ({ ahead }: Phone) => Math.floor(beginning + ahead + time.now())
  const phones = [phoneOf(), phoneOf()]

  function phoneOf(): Phone {
    const alone = aloneOf(chance.happens(0.7))
    const newId = uuidMaker({
      now: () => clockOf(phone),
      fill: (bytes) => {
        for (let i = 0; i < bytes.length; i++) bytes[i] = Math.floor(chance.unit() * 256)
      },
    })
    const disk = diskOf(time, chance, (id, before, after) => {
      // Nothing leaves and nothing is called taken that the book does not have.
      if (before.taken === null && (after === null ? before.problem === null : after.taken !== null))
        mustBeInBook.push(id)
    })
    const phone: Phone = {
      disk,
      pages: [],
      ahead: chance.happens(0.5) ? 0 : chance.normal(chance.pick([5 * minute, 3 * 60 * minute, 3 * day])),
      told: new Map(),
      thrownAway: new Set(),
      open() {
        const page = new Page()
        const outbox = openOutbox({
          keep: disk.of(page),
          send: (entries) => {
            const ids = entries.map(({ id }) => id)
            if (ids.some((id, n) => n > 0 && id < ids[n - 1]!)) wrong.push(`out of order: ${ids.join(' ')}`)
            asking = phone
            return page.awaits(sendEntries(entries))
          },
          alone: alone(page),
          now: () => clockOf(phone),
          tell: () => {
            for (const other of phone.pages) if (other.page !== page && !other.page.isDead) void other.outbox.look()
          },
        })
        phone.pages.push({ page, outbox })
        void outbox.look().then(() => outbox.flush())
        const again = () => {
          if (page.isDead) return
          void outbox.flush()
          time.after(chance.between(5_000, 90_000), again)
        }
        time.after(chance.between(1_000, 30_000), again)
      },
    }
    const walk = () => {
      if (time.now() > roundMs) return
      void write(phone, newId)
      time.after(chance.exponential(40_000), walk)
    }
    phone.open()
    time.after(chance.between(0, minute), walk)
    return phone
  }

  async function write(phone: Phone, newId: () => string): Promise<void> {
    const open = phone.pages.filter(({ page }) => !page.isDead)
    if (open.length === 0) return
    const { outbox } = chance.pick(open)
    const entries = Array.from({ length: 1 + Math.floor(chance.unit() * 3) }, () =>
      entryOf(newId(), clockOf(phone), chance),
    )
    for (const entry of entries) written.set(entry.id, entry)
    const kept = await outbox.add(entries.map((entry) => ({ entry, label: entry.kind })))
    if (isPromised(kept)) for (const entry of entries) phone.told.set(entry.id, entry)
    void outbox.flush()
  }

  const mustBeInBook: string[] = []
  let asking: Phone | null = null
  const { fetch } = globalThis
  globalThis.fetch = badFetch({
    book,
    time,
    chance,
    happened,
    weather: () => weather,
    clockAhead: () => asking?.ahead ?? 0,
  }) as typeof globalThis.fetch
  try {
    for (const phone of phones) {
      trouble(phone, { time, chance, happened })
    }
    time.after(chance.between(0, roundMs), () => {
      weather = weatherOf(chance)
    })
    await time.runUntil(roundMs + chance.between(0, 5 * minute))
    for (const id of new Set(mustBeInBook)) {
      if (!(await inBook([id])).has(id)) wrong.push(`called taken, and not in the book: ${id}`)
    }
    // Fair weather; every page is closed, each phone is opened once more.
    weather = fair
    for (const phone of phones) {
      phone.disk.isFull = false
      for (const { page } of phone.pages) page.kill()
      phone.pages = []
      phone.open()
    }
    await time.runUntil(time.now() + 10 * minute)
  } finally {
    globalThis.fetch = fetch
  }
  const bodies = await inBook([...written.keys()])
  for (const phone of phones) {
    for (const [id, entry] of phone.told) {
      const there = bodies.get(id)
      const here = phone.disk.kept.get(id)
      if (there !== undefined && !isSameBut(JSON.parse(there) as object, entry, 'confirmed'))
        wrong.push(`changed: ${id}`)
      if (there === undefined && here?.problem == null && !phone.thrownAway.has(id)) wrong.push(`lost: ${id}`)
      if (there !== undefined && here !== undefined && here.taken === null)
        wrong.push(`in the book, and still waiting: ${id}`)
      if (here !== undefined && there === undefined) happened.refused += 1
      if (here?.taken?.heldFor != null) happened.held += 1
    }
  }
  return { happened, written: written.size, wrong }
}

/** Pages are killed and opened, a second one beside the first; the disk fills up and empties; the clock is set; refusals are answered. */
function trouble(
  phone: Phone,
  { time, chance, happened }: { time: VirtualTime; chance: Chance; happened: Happened },
): void {
  const often = chance.pick([10_000, 40_000, 3 * minute])
  const next = () => {
    if (time.now() > roundMs) return
    const open = phone.pages.filter(({ page }) => !page.isDead)
    const what = chance.unit()
    if (what < 0.45 && open.length > 0) {
      happened.kills += 1
      chance.pick(open).page.kill()
    } else if (what < 0.55) phone.disk.isFull = !phone.disk.isFull
    else if (what < 0.6) phone.ahead = chance.happens(0.7) ? 0 : chance.normal(day)
    else if (open.length > 0) void answerRefusals(phone, chance.pick(open).outbox, chance)
    phone.pages = phone.pages.filter(({ page }) => !page.isDead)
    if (phone.pages.length === 0 || (phone.pages.length < 2 && chance.happens(0.5))) phone.open()
    time.after(chance.exponential(often), next)
  }
  time.after(chance.exponential(often), next)
}

async function answerRefusals(phone: Phone, outbox: Outbox, chance: Chance): Promise<void> {
  for (const { entry, problem } of outbox.view().all.filter((one: Waiting) => one.problem !== null)) {
    if (problem!.confirmable === true && chance.happens(0.7)) await outbox.confirm(entry.id)
    else if (chance.happens(0.5)) await outbox.again(entry.id)
    else {
      phone.thrownAway.add(entry.id)
      await outbox.drop(entry.id)
    }
  }
}

function weatherOf(chance: Chance): Weather {
  const upTo = (most: number) => (chance.happens(0.3) ? 0 : chance.between(0, most))
  return { lost: upTo(0.9), unheard: upTo(0.6), doubled: upTo(0.5), failed: upTo(0.5), portal: upTo(0.2) }
}

/** Mostly good; some about a sump the book does not know, some that the book refuses for good. */
function entryOf(id: string, now: number, chance: Chance): Entry {
  const at = withOffset(new Date(now), chance.pick([-300, 0, 60]))
  const brix = chance.happens(0.05) ? 300 : Math.round(chance.between(0, 90)) / 10
  const sump = chance.happens(0.1) ? 'nobody-knows' : 'mill-7'
  return { id, at, recordedAt: at, kind: 'reading', sump, brix, volume: Math.round(chance.between(0, 240)) } as Entry
}
