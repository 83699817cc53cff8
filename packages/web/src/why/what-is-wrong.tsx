import { diagnose, type SignId, say, sayDiagnosis, sayFinding } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { Link } from 'wouter-preact'
import { Refusal } from '../api/client.ts'
import { useDiagnosis } from '../api/queries.ts'
import type { Book, SumpDiagnosis } from '../api/types.ts'
import { followUpEntry, labelOf, observationEntry } from '../entry/entries.ts'
import { stampNow } from '../entry/this-device.ts'
import { useWriting } from '../entry/use-writing.ts'
import { Taps, TextField } from '../fields/fields.tsx'
import { AtOnce } from '../parts/at-once.tsx'
import { readerOf } from '../say/units.ts'
import { Causes } from './causes.tsx'
import { FollowUps } from './follow-ups.tsx'
import { Known } from './known.tsx'
import { saySeverity, severities } from './severity.ts'
import { TickList } from './tick-list.tsx'
import { symptomsWith, toWriteDown } from './ticked.ts'
import './why.css'

/** What is wrong with a sump: signs to tick, what must stop, what may be behind it and which test would tell most. */
export function WhatIsWrong({ book, id }: { book: Book; id: string }) {
  const answer = useDiagnosis(id)
  if (answer.data === undefined) {
    if (answer.error === null) return <p class="quiet">{say('Looking it up …')}</p>
    const isUnknown = answer.error instanceof Refusal && answer.error.status === 404
    return (
      <p class="fault">{isUnknown ? say('No sump of this book has the id “{id}”.', { id }) : answer.error.message}</p>
    )
  }
  return <WrongWith key={id} book={book} diagnosis={answer.data} />
}

function WrongWith({ book: { shop }, diagnosis }: { book: Book; diagnosis: SumpDiagnosis }) {
  const { sump, name, symptoms, observed, at } = diagnosis
  // What was ticked or taken back here, beside what the journal has; what is written meanwhile joins by itself.
  const [changed, setChanged] = useState<ReadonlyMap<SignId, boolean>>(new Map())
  const [severity, setSeverity] = useState('')
  const [note, setNote] = useState('')
  const writing = useWriting()
  const reader = readerOf(shop.units)
  const ticked = new Set<SignId>([
    ...symptoms.signs.filter((sign) => changed.get(sign) !== false),
    ...[...changed].flatMap(([sign, isTicked]) => (isTicked ? [sign] : [])),
  ])
  const toggle = (sign: SignId) => setChanged(new Map([...changed, [sign, !ticked.has(sign)]]))
  const notUnderstood = [...new Set(observed.flatMap((one) => one.notUnderstood))]
  const said = sayDiagnosis(diagnose(symptomsWith(symptoms, ticked)), reader, { notUnderstood })
  const fresh = toWriteDown(ticked, symptoms.signs)
  const writeSigns = async () => {
    const entry = observationEntry(fresh, sump, stampNow(), { severity, note: note.trim() })
    if (entry === null || !(await writing.write([{ entry, label: labelOf(entry, name, reader) }]))) return
    setSeverity('')
    setNote('')
  }
  const answerFor = (done: string) => {
    const open = observed.filter(({ toFollowUp, answeredAt }) => toFollowUp.length > 0 && answeredAt === null)
    const entry = followUpEntry(
      open.map((one) => one.entry),
      done,
      sump,
      stampNow(),
    )
    void writing.write([{ entry, label: labelOf(entry, name, reader) }])
  }
  return (
    <div class="why">
      <div class="page-head">
        <h1>{say('What is wrong with {name}?', { name })}</h1>
        <Link class="quiet" href={`/sumps/${encodeURIComponent(sump)}`}>
          {say('Back to {name}', { name })}
        </Link>
      </div>
      <AtOnce stop={said.stop} />
      <div class="why-parts">
        <div>
          <TickList ticked={ticked} toggle={toggle} />
          {fresh.length > 0 && (
            <section aria-labelledby="write-signs" class="write-signs">
              <h3 id="write-signs">{say('Write it down: {signs}', { signs: fresh.map(sayFinding).join(', ') })}</h3>
              <Taps
                legend={say('How strong')}
                name="severity"
                value={severity}
                choices={severities.map((one) => [one, saySeverity(one)] as const)}
                onPick={setSeverity}
              />
              <TextField
                label={say('Note')}
                value={note}
                onInput={setNote}
                hint={say('No names of people, no diagnoses.')}
              />
              <div class="buttons">
                <button type="button" class="main" disabled={writing.isBusy} onClick={() => void writeSigns()}>
                  {say('Write it down')}
                </button>
              </div>
            </section>
          )}
          <p role="status">{writing.said}</p>
        </div>
        <div>
          <Causes causes={said.causes} nextCheck={said.nextCheck} notes={said.notes} />
        </div>
      </div>
      <div class="why-parts">
        <FollowUps observed={observed} timeZone={shop.timeZone} now={at} isBusy={writing.isBusy} write={answerFor} />
        <Known diagnosis={diagnosis} units={shop.units} timeZone={shop.timeZone} now={at} />
      </div>
      {said.cautions.map((caution) => (
        <p class="quiet" key={caution}>
          {caution}
        </p>
      ))}
    </div>
  )
}
