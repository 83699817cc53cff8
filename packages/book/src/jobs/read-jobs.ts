import { dueDay, firstWorkDay, laterSlideDays, type Reader, say, sayJob, saySheet, unitsHere } from '@sumpbook/fluid'
import type { BookParts, TodayReader } from '../book-parts.ts'
import { BookError } from '../errors.ts'
import { calendarOf } from '../estimate/calendar-of.ts'
import { dayText } from '../estimate/shop-clock.ts'
import { germClassesOf, limitsEverywhere, limitsOfSump } from '../guidance/offered-limits.ts'
import { shopGuidance } from '../guidance/shop-guidance.ts'
import { nothingTold } from '../guidance/told-tests.ts'
import { startOfDay } from '../journal/calendar.ts'
import { withdrawnBy } from '../journal/withdrawn.ts'
import type { EntryOf } from '../schema/entries/index.ts'
import type { Sump } from '../schema/things/index.ts'
import type { ThingHistory, Things } from '../setup/things.ts'
import type { JournalReader } from '../store/store.ts'
import type { Claim } from './claim-types.ts'
import { jobKey } from './claims.ts'
import { type FoldedJob, foldJob } from './fold-job.ts'
import { compareEntries } from './in-order.ts'
import { type Job, type JobLine, type Jobs, type SheetKind, sheetKinds } from './job-types.ts'
import { readClaims } from './read-claims.ts'

type Signoff = EntryOf<'signoff'>
type Parts = Pick<BookParts, 'journal' | 'things'>

/** For whom, and when. */
export interface JobQuestion {
  at: Date
  /** Entries after it do not count; the time of asking unless given. */
  until?: Date
  reader?: TodayReader
}

/** Every job of the shop as its entries leave it. Queries never write. */
export async function readJobs(parts: Parts, question: JobQuestion): Promise<Jobs> {
  const { jobs, claims, shop } = await readFolded(parts, question)
  const lines = jobs.map((job) => lineOf(job, { ...shop, claims }))
  const of = (...states: JobLine['state'][]) => lines.filter(({ state }) => states.includes(state))
  return {
    at: question.at.toISOString(),
    open: of('open', 'waiting').sort(byUrgency),
    planned: of('planned').sort(
      (a, b) => compare(a.plannedOn ?? '9', b.plannedOn ?? '9') || compare(a.openedAt, b.openedAt),
    ),
    done: of('done', 'given-up').sort((a, b) => compare(b.endedAt ?? '', a.endedAt ?? '')),
  }
}

/**
 * One job with its sheet.
 *
 * @throws {BookError} `not-found` a job the book does not have
 */
export async function readJob(parts: Parts, id: string, question: JobQuestion): Promise<Job> {
  const { jobs, claims, shop } = await readFolded(parts, question, id.toLowerCase())
  const [folded] = jobs
  if (folded === undefined) throw new BookError('not-found', `This book has no job "${id}".`)
  const { cleanout } = folded.made ?? {}
  return {
    ...lineOf(folded, { ...shop, claims }),
    steps: folded.steps,
    nextStep: folded.nextStep?.id ?? null,
    totals:
      cleanout == null
        ? null
        : {
            waste: cleanout.quantities.waste,
            downtimeHours: cleanout.downtimeHours,
            labourHours: cleanout.labourHours,
            drainBy: cleanout.way.way,
          },
    values: folded.opened.values ?? {},
    strays: folded.strays,
  }
}

interface JobShop {
  things: Things
  history: ThingHistory
  /** UTC text. */
  at: string
  reader: Reader
}

/** Every job, or one alone, with who holds what. */
export async function readFolded(
  { journal, things }: Parts,
  { at, until = at, reader = {} }: JobQuestion,
  only?: string,
): Promise<{ jobs: FoldedJob[]; claims: Map<string, Claim>; shop: JobShop }> {
  const [signoffs, history, claims] = await Promise.all([
    standingSignoffs(journal, until.toISOString()),
    things(),
    readClaims(journal, { until }),
  ])
  const present = history.at(until.toISOString())
  const shop = { things: present, history, at: at.toISOString(), reader: { units: unitsHere(present.shop), ...reader } }
  const byJob = Map.groupBy(signoffs, ({ job, id }) => (job ?? id).toLowerCase())
  const jobs = [...byJob].flatMap(([id, entries]) => {
    if (only !== undefined && id !== only) return []
    // An opening names itself; what names a job whose opening has not arrived waits for it.
    const opened = entries.find((entry) => entry.step === 'opened' && entry.id.toLowerCase() === id)
    return opened === undefined || !isSheetKind(opened.sheet) ? [] : [foldOne(opened, opened.sheet, entries, shop)]
  })
  return { jobs: jobs.sort((a, b) => compareEntries(a.opened, b.opened)), claims, shop }
}

const isSheetKind = (sheet: string | undefined): sheet is SheetKind =>
  (sheetKinds as readonly (string | undefined)[]).includes(sheet)

function foldOne(
  opened: Signoff,
  sheet: SheetKind,
  entries: readonly Signoff[],
  { things, at, reader }: JobShop,
): FoldedJob {
  const sump = opened.sump === undefined ? null : (things.sump.get(opened.sump) ?? null)
  return foldJob(opened, entries, { sheet, sump, things, at, reader, judgedBy: { bacteria: germLimit(sump, things) } })
}

/** The shop's own limit for a sump, else the bound of good by the guidance it has chosen. */
function germLimit(sump: Sump | null, things: Things): number | null {
  if (sump === null) return null
  const own = sump.limits?.bacteria?.high ?? things.fluid.get(sump.fluid)?.limits?.bacteria?.high
  if (own !== undefined) return own
  const guidance = shopGuidance(things)
  const limits = limitsOfSump(sump, nothingTold(), { things, guidance, everywhere: limitsEverywhere(guidance) })
  return germClassesOf(limits)?.classes.reasonable ?? null
}

async function standingSignoffs(journal: JournalReader, until: string): Promise<Signoff[]> {
  const [entries, voids] = await Promise.all([
    journal.entries({ kinds: ['signoff'], order: 'time', until }),
    journal.voids(),
  ])
  const withdrawn = withdrawnBy(voids)
  return entries
    .filter(({ id, body }) => !withdrawn.has(id) && body.includes('"job"'))
    .map(({ body }) => JSON.parse(body) as Signoff)
}

function lineOf(
  job: FoldedJob,
  { things, history, at, claims }: JobShop & { claims: ReadonlyMap<string, Claim> },
): JobLine {
  const { id, opened, sheet, state, steps, nextStep, endedAt } = job
  const { timeZone, name: shopName } = things.shop
  const sump = opened.sump === undefined ? null : things.sump.get(opened.sump)
  const name = sump?.name ?? opened.sump ?? (shopName === '' ? say('The shop') : shopName)
  const plannedOn = typeof opened.values?.on === 'string' ? opened.values.on : null
  const slideOn = state === 'waiting' ? slideDay(job, history) : null
  const dayStart = (day: string | null) => (day === null ? null : startOfDay(day, timeZone))
  const done = steps.filter(({ isDone }) => isDone).length
  const verdict = steps.findLast((step) => step.verdict !== null)?.verdict?.sentences[0] ?? null
  const said = { state, done, steps: steps.length, next: nextStep?.title ?? null, verdict }
  return {
    id,
    sheet,
    title: saySheet(sheet, name),
    sump: opened.sump ?? null,
    name,
    state,
    openedBy: opened.by ?? null,
    openedAt: new Date(opened.at).toISOString(),
    plannedOn,
    done,
    steps: steps.length,
    next: nextStep?.title ?? null,
    slideOn,
    endedAt,
    claimedBy: claims.get(jobKey(id)) ?? null,
    sentence: sayJob({ ...said, plannedAt: dayStart(plannedOn), slideAt: dayStart(slideOn) }, { timeZone, now: at }),
  }
}

/** The first working day from one week after the fresh charge on, as a day; two weeks after at the latest where one lies between. */
export function slideDay({ chargedAt }: Pick<FoldedJob, 'chargedAt'>, history: ThingHistory): string | null {
  if (chargedAt === null) return null
  const { clock, calendar } = calendarOf(history)
  const charged = Math.floor(clock.at(Date.parse(chargedAt)))
  const first = firstWorkDay(charged + laterSlideDays.earliest, calendar)
  if (first <= charged + laterSlideDays.latest) return dayText(first)
  return dayText(dueDay({ lastOn: charged, everyDays: laterSlideDays.latest, from: charged }, calendar))
}

const byUrgency = (a: JobLine, b: JobLine) =>
  (a.state === b.state ? 0 : a.state === 'open' ? -1 : 1) ||
  compare(a.slideOn ?? '', b.slideOn ?? '') ||
  compare(a.openedAt, b.openedAt)

const compare = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0)
