import { needsFollowUp } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import type { ShopOfBook, SumpNow } from '../api/types.ts'
import { isPour, pouredAsWritten, skipEntry } from '../entry/entries.ts'
import { newId } from '../entry/uuid.ts'
import { readerOf } from '../say/units.ts'
import { useClaimHere } from './claim-here.tsx'
import { useOpenHere } from './open-here.tsx'
import { signsOf } from './signs.ts'
import type { StopRecord } from './stop-record.ts'
import { readTested } from './tested.ts'
import type { Typed } from './typed.ts'
import { useSteps } from './use-steps.ts'
import { useWriteDown } from './use-write-down.ts'
import { verdictOf } from './verdict.ts'
import { type Done, type Draft, emptyDraft, keepDraft, loadDraft } from './walk.ts'

export interface StopParts {
  sump: SumpNow
  shop: ShopOfBook
  /** What was done here; null where it was only passed by. To the next stop, unless to another page. */
  leave(sump: string, what: Done | null, record: StopRecord | null, to?: string): void
}

/** The one thing that is asked in place of keys and buttons. */
export type Asked = 'otherwise' | 'not-poured' | 'claimed'

/** What stands at a stop of the round: what was typed and seen, what follows from it, and what can be done about it. */
export type StopState = ReturnType<typeof useStop>

export function useStop({ sump, shop, leave }: StopParts) {
  const [draft, setDraft] = useState<Draft>(() => loadDraft(sump.sump))
  const { typed, seen, tested } = draft
  const steps = useSteps(sump.sump, tested)
  const claim = useClaimHere(sump.sump)
  const open = useOpenHere(sump.sump, steps.step)
  const [asked, setAsked] = useState<Asked | null>(null)
  const verdict = verdictOf(typed, sump, readerOf(shop.units), Date.now())
  const { advice, faults, questions } = verdict
  const tests = readTested(tested)
  const writing = useWriteDown({
    draft,
    verdict,
    sump,
    shop,
    goOn: (what, record, to) => {
      setDraft(emptyDraft)
      leave(sump.sump, what, record, to)
    },
  })

  // A picture takes a while to be made smaller: what was typed meanwhile stays.
  const change = (part: Partial<Draft>) =>
    setDraft((before) => {
      const next = { ...before, ...part, id: before.id === '' ? newId() : before.id }
      keepDraft(sump.sump, next)
      return next
    })
  return {
    sump,
    shop,
    draft,
    change,
    type: (part: Partial<Typed>) => change({ typed: { ...typed, ...part } }),
    ...steps,
    verdict,
    claim,
    open,
    // A figure that is typed over leaves no recipe to pour otherwise.
    asked: asked === 'otherwise' && advice === null ? null : asked,
    setAsked,
    ...writing,
    isAsked:
      faults.length > 0 || questions.length > 0 || tests.questions.length > 0 || Object.keys(tests.faults).length > 0,
    canPour: advice !== null && isPour(advice.recipe),
    // What is read where a record does not fit is looked at together with it, before anything is poured.
    settles: sump.doubts.length > 0 && typed.brix.trim() !== '',
    // What must stop is looked into first, and a cleanout finished: the pour can be written down, but is not what the page leads to.
    isHeld: open.isCleanedOut || signsOf(seen).some(needsFollowUp),
    poured: () =>
      void writing.writeDown('poured', (stamp) => pouredAsWritten(advice!, sump, readerOf(shop.units), stamp)),
    passBy: (reason: 'locked' | 'down') =>
      void writing.writeDown(reason, (stamp) => [skipEntry(reason, '', sump.sump, stamp)]),
  }
}
