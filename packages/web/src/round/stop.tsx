import { needsFollowUp, say, trueLitres } from '@sumpbook/fluid'
import { useEffect, useRef, useState } from 'preact/hooks'
import { Link } from 'wouter-preact'
import { useCalendar } from '../api/guidance.ts'
import type { Entry, ShopOfBook, SumpNow, Thing } from '../api/types.ts'
import { isOnlyHere, keepHere, sendSoon, whenInBook } from '../entry/book-outbox.ts'
import { isPour, labelOf, observationEntry, pouredAsWritten, readingEntry, skipEntry } from '../entry/entries.ts'
import type { Stamp } from '../entry/stamp.ts'
import { stampNow } from '../entry/this-device.ts'
import { FaultWords, Taps } from '../fields/fields.tsx'
import { QueueState } from '../offline/queue-state.tsx'
import { AtOnce } from '../parts/at-once.tsx'
import { dropPhoto, photoWritten } from '../photo/waiting-photos.ts'
import { readerOf } from '../say/units.ts'
import { inTrueLitres } from '../standing/true-litres.ts'
import { lookedEntry } from '../tests/test-entries.ts'
import { NotPouredForm, OtherwiseForm } from '../today/pour-forms.tsx'
import { ClaimHere, useClaimHere } from './claim-here.tsx'
import { Keys } from './keys.tsx'
import { LevelRow } from './level-row.tsx'
import { PhotoRow } from './photo-row.tsx'
import { isAllSeen, type Seen, saySeen, senses, signNotes, signsOf, stopsOf } from './signs.ts'
import { recordOf, type StopRecord } from './stop-record.ts'
import { Say, sayLast } from './stop-words.tsx'
import { hasTests, readTested, stripFor, type TestKey, testedEntries, testFields } from './tested.ts'
import { TestsRow } from './tests-row.tsx'
import { expectedOf, sayExpected, type Typed, verdictOf } from './verdict.ts'
import { type Done, type Draft, dropDraft, emptyDraft, keepDraft, loadDraft } from './walk.ts'

type Step = 'level' | 'signs' | 'tests' | 'brix'

interface StopProps {
  sump: SumpNow
  place: { at: number; of: number }
  shop: ShopOfBook
  /** Refractometers, meters and strips of the shop. */
  instruments: readonly Thing[]
  /** What was done here; null where it was only passed by. To the next stop, unless to another page. */
  leave(sump: string, what: Done | null, record: StopRecord | null, to?: string): void
}

/** One sump on the round: level first, three looks, then the refractometer, and the recipe at once. */
export function Stop({ sump, place, shop, instruments, leave }: StopProps) {
  const [draft, setDraft] = useState<Draft>(() => loadDraft(sump.sump))
  const [step, setStep] = useState<Step>('level')
  const [open, setOpen] = useState<'otherwise' | 'not-poured' | 'claimed' | null>(null)
  const [test, setTest] = useState<TestKey | null>(null)
  const [isAllTests, setAllTests] = useState(false)
  const [isAlone, setAlone] = useState(false)
  /** The way on, where neither device nor book took what was written. */
  const [onlyHere, setOnlyHere] = useState<(() => void) | null>(null)
  const isWriting = useRef(false)
  const levelField = useRef<HTMLInputElement>(null)
  const brixField = useRef<HTMLInputElement>(null)
  const reader = readerOf(shop.units)
  const { typed, seen, tested, photo } = draft
  const claim = useClaimHere(sump.sump)
  const due = useDueTests(sump.sump)
  const tests = readTested(tested)
  const strips = Object.fromEntries(
    testFields.flatMap(({ key }) => {
      const strip = stripFor(key, instruments)
      return strip === null ? [] : [[key, strip]]
    }),
  )
  const now = Date.now()
  const verdict = verdictOf(typed, sump, reader, now)
  const expected = expectedOf(sump, now)
  const { advice, faults, questions } = verdict
  const isAsked =
    faults.length > 0 || questions.length > 0 || tests.questions.length > 0 || Object.keys(tests.faults).length > 0
  const canPour = advice !== null && isPour(advice.recipe)
  // What is read where a record does not fit is looked at together with it, before anything is poured.
  const settles = sump.doubts.length > 0 && typed.brix.trim() !== ''
  // What must stop is looked into first: the pour can be written down, but is not what the page leads to.
  const isHeld = signsOf(seen).some(needsFollowUp)

  const change = (next: Draft) => {
    setDraft(next)
    keepDraft(sump.sump, next)
  }
  const type = (change_: Partial<Typed>) => change({ ...draft, typed: { ...typed, ...change_ } })
  const isWanted = (key: TestKey) => due.some((line) => line.test === key) && (tested.texts[key] ?? '') === ''
  const isTestLeft =
    testFields.some(({ key }) => isWanted(key)) ||
    (due.some((line) => line.test === 'bacteria') && !tested.taken.includes('dip slide'))
  // Where nothing is due the recipe has the room; other tests are a tap away.
  const hasTestsRow = due.length > 0 || hasTests(tested) || step === 'tests'
  const afterLooks: Step = isTestLeft ? 'tests' : 'brix'
  const goTo = (next: Step) => {
    setStep(next)
    const field = next === 'level' ? levelField : next === 'brix' ? brixField : null
    field?.current?.focus({ preventScroll: true })
    if (next === 'tests') setTest(testFields.find(({ key }) => isWanted(key))?.key ?? null)
  }
  useEffect(() => levelField.current?.focus({ preventScroll: true }), [])

  const goOn = (what: Done | null, record: StopRecord | null, to?: string) => {
    setDraft(emptyDraft)
    leave(sump.sump, what, record, to)
  }
  const writeDown = async (what: Done | null, more: (stamp: Stamp) => Entry[] = () => [], to?: string) => {
    if (isWriting.current) return
    const stamp = stampNow()
    const found = [readingEntry(typed, verdict, sump.sump, stamp), lookOf(seen, sump.sump, stamp)]
    const written = [
      ...found.filter((entry) => entry !== null),
      ...testedEntries(tested, sump.sump, stamp),
      ...more(stamp),
    ]
    // A picture alone says nothing: it goes with what was seen or read.
    if (photo !== null && written.length === 0 && to === undefined) return setAlone(true)
    const entries = withPhoto(written, photo)
    const record = recordOf(entries, reader)
    const done = what ?? (entries.length > 0 || isAllSeen(seen) ? 'read' : null)
    if (entries.length > 0) {
      isWriting.current = true
      const items = entries.map((entry) => ({ entry, label: labelOf(entry, sump.name, reader) }))
      // Before the entry that names it: what is killed in between leaves a picture too many, never one too few.
      if (photo !== null) await photoWritten(photo).catch(() => {})
      const kept = await keepHere(items)
      const sent = sendSoon()
      // What the device does not keep stays typed there until the book has it.
      if (kept === 'page') {
        void whenInBook(items).then(() => dropDraft(sump.sump))
        await sent
      }
      isWriting.current = false
      if (isOnlyHere(items)) return setOnlyHere(() => () => goOn(done, record, to))
    } else if (photo !== null) void dropPhoto(photo).catch(() => {})
    dropDraft(sump.sump)
    goOn(done, entries.length === 0 ? null : record, to)
  }
  const skip = (reason: 'locked' | 'down') =>
    void writeDown(reason, (stamp) => [skipEntry(reason, '', sump.sump, stamp)])
  const keyTarget = step === 'brix' ? 'brix' : 'level'
  const typeTest = (change_: (text: string) => string) => {
    if (test === null) return
    const { [test]: _, ...others } = tested.strips
    const texts = { ...tested.texts, [test]: change_(tested.texts[test] ?? '') }
    change({ ...draft, tested: { ...tested, texts, strips: others } })
  }
  const press = (key: string) => {
    if (step === 'tests') return typeTest((text) => text + key)
    if (keyTarget === 'brix') return type({ brix: typed.brix + key })
    const isFresh = typed.levelBy === 'mark' || typed.levelBy === 'quarter'
    return type({ levelBy: isFresh ? 'volume' : typed.levelBy, level: isFresh ? key : typed.level + key })
  }
  const rub = () => {
    if (step === 'tests') return typeTest((text) => text.slice(0, -1))
    if (keyTarget === 'brix') return type({ brix: typed.brix.slice(0, -1) })
    return type({ level: typed.levelBy === 'quarter' ? '' : typed.level.slice(0, -1) })
  }
  const poured = () => void writeDown('poured', (stamp) => pouredAsWritten(advice!, sump, reader, stamp))

  const claimHere = canPour && !isAsked && (
    <ClaimHere claim={claim} sump={sump.sump} name={sump.name} timeZone={shop.timeZone} />
  )
  return (
    <section class={`stop step-${step}`} aria-labelledby="stop-name">
      <div class="stop-head">
        <Link href="/round">{say('Round')}</Link>
        <span>{say('{at} of {all}', { at: place.at, all: place.of })}</span>
        <QueueState />
      </div>
      <div class="stop-body">
        <h1 id="stop-name">{sump.name}</h1>
        <p class="sub">
          {sump.place !== null && `${sump.place} · `}
          {sayLast(sump, shop)}
        </p>
        {sump.doubts.length > 0 && (
          <details class="doubt stop-doubt">
            <summary>{say('A record here does not fit')}</summary>
            {sump.doubts.map(({ text }) => (
              <p>{text}</p>
            ))}
          </details>
        )}
        <div class="rows">
          <LevelRow
            typed={typed}
            sump={sump}
            shop={shop}
            field={levelField}
            type={type}
            onFocus={() => setStep('level')}
            onEnter={() => goTo('signs')}
            isActive={step === 'level'}
          />
          {faults
            .filter(({ field }) => field === 'level')
            .map((fault) => (
              <FaultWords fault={fault} />
            ))}
          <button type="button" class="row signs" aria-expanded={step === 'signs'} onClick={() => goTo('signs')}>
            <span class="row-label">{say('Look · smell · oil')}</span>
            <b>{saySeen(seen) || <span class="quiet">{say('not looked yet')}</span>}</b>
          </button>
        </div>
        {step === 'signs' && (
          <div class="looks">
            {senses.map(({ sense, legend, choices }) => (
              <Taps
                key={sense}
                legend={say(legend)}
                name={sense}
                value={seen[sense]}
                choices={choices.map(({ tap, words }) => [tap, say(words)])}
                onPick={(tap) => {
                  const now = { ...seen, [sense]: tap }
                  change({ ...draft, seen: now })
                  if (!isAllSeen(seen) && isAllSeen(now)) goTo(afterLooks)
                }}
              />
            ))}
          </div>
        )}
        <AtOnce stop={stopsOf(seen)} comesIntoView />
        {hasTestsRow && (
          <TestsRow
            tested={tested}
            due={due}
            strips={strips}
            isOpen={step === 'tests'}
            isAll={isAllTests || due.length === 0}
            active={step === 'tests' ? test : null}
            open={() => goTo('tests')}
            showAll={() => setAllTests(true)}
            focus={setTest}
            change={(next) => change({ ...draft, tested: next })}
            onEnter={() => goTo('brix')}
          />
        )}
        <div class={step === 'brix' ? 'row read here' : 'row read'}>
          <label for="brix">
            {say('Refractometer')}
            {expected !== null && <small>{say('expected {range}', { range: sayExpected(expected.expected) })}</small>}
          </label>
          <input
            id="brix"
            ref={brixField}
            value={typed.brix}
            inputMode="none"
            autocomplete="off"
            aria-label={say('Refractometer, °Brix')}
            aria-invalid={faults.some(({ field }) => field === 'brix') || undefined}
            onFocus={() => setStep('brix')}
            onInput={(event) => type({ brix: event.currentTarget.value })}
            onKeyDown={(event) => {
              if (event.key !== 'Enter') return
              // Without this the same key press would go on to press the button it moves to.
              event.preventDefault()
              document.querySelector<HTMLElement>('.stop-buttons button:enabled')?.focus()
            }}
          />
          <span>°Brix</span>
        </div>
        {faults
          .filter(({ field }) => field === 'brix')
          .map((fault) => (
            <FaultWords fault={fault} />
          ))}
        {questions.map(({ question, yes, pointer, text }) => (
          <div class="fault" role="alert" key={pointer}>
            {question}{' '}
            <button type="button" onClick={() => type({ confirmed: { ...typed.confirmed, [pointer]: text } })}>
              {yes}
            </button>
          </div>
        ))}
        {claim.isNews && claimHere}
        <Say
          verdict={verdict}
          sump={sump}
          shop={shop}
          notes={verdict.notes}
          signs={signNotes(seen)}
          isAsked={isAsked}
        />
        {!claim.isNews && claimHere}
        <div class="beside">
          {!hasTestsRow && (
            <button type="button" class="plain" onClick={() => goTo('tests')}>
              {say('Other tests')}
            </button>
          )}
          <PhotoRow photo={photo} change={(name) => change({ ...draft, photo: name })} />
        </div>
        {isAlone && photo !== null && (
          <p class="fault" role="alert">
            {say(
              'Found a photo alone; expected a look, a level or a reading that it goes with. Locked and down take it too.',
            )}
          </p>
        )}
        {signsOf(seen).length > 0 && (
          <button
            type="button"
            class="plain to-why"
            disabled={isAsked}
            onClick={() => void writeDown(null, undefined, `/sumps/${encodeURIComponent(sump.sump)}/why`)}
          >
            {say('Write it down and look for the cause')}
          </button>
        )}
      </div>
      {onlyHere !== null && (
        <div class="stop-foot" role="alert">
          <p class="fault">
            {say(
              'This device did not keep it and the book is out of reach. Only this open page holds it: leave the page open until it is sent. What was typed stays in the fields until then.',
            )}
          </p>
          <div class="stop-buttons">
            <button type="button" class="main" onClick={onlyHere}>
              {say('Go on')}
            </button>
          </div>
        </div>
      )}
      {open === 'otherwise' && onlyHere === null && advice !== null && (
        <div class="stop-foot">
          <OtherwiseForm
            item={advice}
            sump={inTrueLitres(sump)}
            units={shop.units}
            volume={
              verdict.level === null
                ? (sump.volume?.mean ?? null)
                : trueLitres(verdict.level.litres, sump.bench, sump.mark)
            }
            write={(build) => void writeDown('poured', build)}
            cancel={() => setOpen(null)}
          />
        </div>
      )}
      {open === 'claimed' && onlyHere === null && (
        <div class="stop-foot" role="alert">
          <p>
            {say('{who} said first that they pour here. Write it down as poured only if it was you who poured.', {
              who: claim.other ?? claim.gone ?? say('Somebody'),
            })}
          </p>
          <div class="stop-buttons">
            <button type="button" onClick={poured}>
              {say('I poured it')}
            </button>
            <button type="button" class="main" onClick={() => setOpen(null)}>
              {say('Back')}
            </button>
          </div>
        </div>
      )}
      {open === 'not-poured' && onlyHere === null && (
        <div class="stop-foot">
          <NotPouredForm
            sump={sump.name}
            write={(note) => void writeDown('not poured', (stamp) => [skipEntry('not poured', note, sump.sump, stamp)])}
            cancel={() => setOpen(null)}
          />
        </div>
      )}
      {open === null && onlyHere === null && (
        <div class="stop-foot">
          {step !== 'signs' && (step !== 'tests' || test !== null) && <Keys press={press} rub={rub} />}
          <div class="stop-buttons">
            {canPour && !isAsked && (
              <>
                <button
                  type="button"
                  class={isHeld || claim.other !== null ? 'wide' : 'main'}
                  onClick={() => (claim.other === null ? poured() : setOpen('claimed'))}
                >
                  {advice.recipe.add === null ? say('Drawn off as written · next') : say('Poured as written · next')}
                </button>
                <button type="button" onClick={() => setOpen('otherwise')}>
                  {say('Otherwise')}
                </button>
                <button type="button" onClick={() => setOpen('not-poured')}>
                  {say('Not poured')}
                </button>
              </>
            )}
            {typed.brix.trim() === '' && step !== 'brix' && (
              <button
                type="button"
                class="main"
                onClick={() => goTo(step === 'level' ? 'signs' : step === 'signs' ? afterLooks : 'brix')}
              >
                {step === 'level'
                  ? say('On to look, smell, oil')
                  : step === 'signs' && isTestLeft
                    ? say('On to the tests')
                    : say('On to the refractometer')}
              </button>
            )}
            {typed.brix.trim() === '' && (
              <>
                <button type="button" onClick={() => skip('locked')} disabled={isAsked}>
                  {say('Locked')}
                </button>
                <button type="button" onClick={() => skip('down')} disabled={isAsked}>
                  {say('Down')}
                </button>
              </>
            )}
            {settles && (
              <button
                type="button"
                class="main"
                onClick={() => void writeDown(null, undefined, `/sumps/${encodeURIComponent(sump.sump)}`)}
                disabled={isAsked}
              >
                {say('Write it down, see what fits')}
              </button>
            )}
            <button
              type="button"
              class={typed.brix.trim() !== '' && !settles && (!canPour || isHeld || claim.other !== null) ? 'main' : ''}
              onClick={() => void writeDown(null)}
              disabled={isAsked}
            >
              {say('Next')}
            </button>
          </div>
        </div>
      )}
    </section>
  )
}

/** What was seen; that all was fine is written down as well, since a daily look is asked for by more than one guidance. */
function lookOf(seen: Seen, sump: string, stamp: Stamp): Entry | null {
  const signs = signsOf(seen)
  return signs.length === 0 && isAllSeen(seen) ? lookedEntry(sump, stamp) : observationEntry(signs, sump, stamp)
}

/** What is due here beside strength and the look, which every stop has anyway. */
function useDueTests(sump: string) {
  const { data } = useCalendar()
  const tests = data?.sumps.find((line) => line.sump === sump)?.tests ?? []
  return tests.filter(({ test, isDue }) => isDue && test !== 'senses' && test !== 'concentration')
}

/** One entry names the picture: what was seen, else the first. */
function withPhoto(entries: readonly Entry[], photo: string | null): Entry[] {
  if (photo === null) return [...entries]
  const named = entries.find(({ kind }) => kind === 'observation') ?? entries[0]
  return entries.map((entry) => (entry === named ? ({ ...entry, photo } as Entry) : entry))
}
