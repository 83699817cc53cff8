import { notPouredReasons, reasonWith, say, sayPercent, sayVolume } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import type { Entry, SumpItem, SumpNow, Units } from '../api/types.ts'
import { additionEntry, drawoffEntry } from '../entry/entries.ts'
import type { Stamp } from '../entry/stamp.ts'
import { SelectField, Taps, TextField } from '../fields/fields.tsx'
import { type FieldRead, readLitres, readStrength, withUnit } from '../fields/read.ts'
import { fieldPercent, fieldVolume, readerOf, shopUnits } from '../say/units.ts'

type Build = (stamp: Stamp) => Entry[]

interface OtherwiseProps {
  item: Pick<SumpItem, 'recipe' | 'dispensed'>
  sump: SumpNow
  units: Units
  /** Litres in the sump before the pour, where known. */
  volume: number | null
  write(build: Build): void
  cancel(): void
}

/** What was really poured, where it was not what was written. */
export function OtherwiseForm({ item, sump, units, volume, write, cancel }: OtherwiseProps) {
  const { add, drawOff } = item.recipe
  const poured = item.dispensed ?? add
  const hasPour = add !== null
  const [draw, setDraw] = useState(drawOff > 0 ? fieldVolume(drawOff, units) : '')
  const [amount, setAmount] = useState(poured === null ? '' : fieldVolume(poured.volume, units))
  const [strength, setStrength] = useState(poured === null ? '' : fieldPercent(poured.strength, 1))
  const [isToMark, setToMark] = useState(false)
  const [water, setWater] = useState(add?.waters[0]?.id ?? '')
  const [isTried, setTried] = useState(false)
  const [confirmed, setConfirmed] = useState<readonly string[]>([])
  const { volumeWord } = shopUnits[units]
  const unit = say(shopUnits[units].volumeName)
  const reader = readerOf(units)

  const drawn = readLitres(draw, units, hasPour ? { min: 0 } : { above: 0 })
  const pour = readLitres(amount, units, { above: 0 })
  const at = readStrength(strength)
  const missing =
    hasPour && isTried && !isToMark && amount.trim() === ''
      ? say('Found nothing; expected {unit}, or “filled to the mark”.', { unit })
      : null
  const questions = questionsOf({ pour: isToMark ? { value: null } : pour, drawn, at, volume, sump, units }).filter(
    ({ question }) => !confirmed.includes(question),
  )

  const submit = (event: Event) => {
    event.preventDefault()
    setTried(true)
    if ('fault' in drawn || 'fault' in at) return
    if (hasPour && !isToMark && ('fault' in pour || pour.value === null)) return
    if (!hasPour && drawn.value === null) return
    if (questions.length > 0) return
    const pointers = questionsOf({ pour: isToMark ? { value: null } : pour, drawn, at, volume, sump, units }).map(
      ({ pointer }) => pointer,
    )
    write((stamp) => {
      const entries: Entry[] = []
      if (drawn.value !== null && drawn.value > 0) {
        entries.push(drawoffEntry(drawn.value, sump.sump, reader, stamp, withUnit(draw, volumeWord)))
      }
      if (!hasPour) return entries
      const entry = additionEntry(
        {
          volume: isToMark || 'fault' in pour ? null : pour.value,
          strength: at.value,
          water: water === '' ? null : water,
          typed: {
            ...(isToMark ? { toMark: 'filled to the mark' } : { volume: withUnit(amount, volumeWord) }),
            ...(at.value === null ? {} : { strength: withUnit(strength, '%') }),
          },
        },
        sump,
        reader,
        stamp,
      )
      entries.push(pointers.length === 0 ? entry : { ...entry, confirmed: pointers })
      return entries
    })
  }

  return (
    <form class="pour-form" onSubmit={submit} aria-label={say('What was poured into {sump}', { sump: sump.name })}>
      {drawOff > 0 && (
        <TextField
          numeric
          label={hasPour ? say('Drawn off first, {unit}', { unit }) : say('Drawn off, {unit}', { unit })}
          value={draw}
          onInput={setDraw}
          fault={
            faultOf(drawn) ??
            (isTried && !hasPour && draw.trim() === '' ? { found: say('nothing'), expected: unit } : null)
          }
        />
      )}
      {hasPour && (
        <>
          <TextField
            numeric
            label={say('Volume poured, {unit}', { unit })}
            value={isToMark ? '' : amount}
            onInput={(text) => {
              setToMark(false)
              setAmount(text)
            }}
            fault={isToMark ? null : (faultOf(pour) ?? missing)}
          />
          <TextField
            numeric
            label={say('Strength poured, %')}
            value={strength}
            onInput={setStrength}
            fault={faultOf(at)}
            hint={say('or a ratio, 1:20')}
          />
          {sump.bench.waters.length > 0 && (
            <SelectField
              label={say('Water')}
              value={water}
              onInput={setWater}
              choices={[['', say('not known')], ...sump.bench.waters.map(({ id, name }) => [id, name] as const)]}
            />
          )}
          <label class="check">
            <input type="checkbox" checked={isToMark} onChange={() => setToMark(!isToMark)} />
            {say('Filled to the mark, amount not measured')}
          </label>
        </>
      )}
      {isTried &&
        questions.map(({ question }) => (
          <div class="fault" role="alert">
            {question} {say('Is that right?')}{' '}
            <button type="button" onClick={() => setConfirmed([...confirmed, question])}>
              {say('Yes, that is right')}
            </button>
          </div>
        ))}
      <div class="buttons">
        <button type="submit" class="main">
          {say('Write it down')}
        </button>
        <button type="button" class="plain" onClick={cancel}>
          {say('Back')}
        </button>
      </div>
    </form>
  )
}

const faultOf = (read: FieldRead) => ('fault' in read ? read.fault : null)

interface Asked {
  pour: FieldRead
  drawn: FieldRead
  at: FieldRead
  volume: number | null
  sump: SumpNow
  units: Units
}

/** What is possible, but worth one more look. */
export function questionsOf({
  pour,
  drawn,
  at,
  volume,
  sump: { bench },
  units,
}: Asked): { pointer: string; question: string }[] {
  const questions: { pointer: string; question: string }[] = []
  const reader = readerOf(units)
  const brim = bench.capacity ?? (bench.fillVolume === null ? null : 1.25 * bench.fillVolume)
  if (!('fault' in pour) && pour.value !== null && volume !== null && brim !== null) {
    const out = 'fault' in drawn ? 0 : (drawn.value ?? 0)
    const after = Math.max(0, volume - out) + pour.value
    if (after > brim) {
      const question = say('With {pour} more there would be {after} in it; its brim is at {brim}.', {
        pour: sayVolume(pour.value, reader),
        after: sayVolume(after, reader),
        brim: sayVolume(brim, reader),
      })
      questions.push({ pointer: '/volume', question })
    }
  }
  if (!('fault' in at) && at.value !== null && at.value > bench.maxStrength) {
    const question = say('{strength} is stronger than the strongest mix poured here, {most}.', {
      strength: sayPercent(at.value, reader),
      most: sayPercent(bench.maxStrength, reader),
    })
    questions.push({ pointer: '/strength', question })
  }
  return questions
}

/** Why a pour was not made: one tap, and a word more if there is one. */
export function NotPouredForm({ sump, write, cancel }: { sump: string; write(note: string): void; cancel(): void }) {
  const [reason, setReason] = useState<string | null>(null)
  const [words, setWords] = useState('')
  return (
    <form
      class="pour-form why-not"
      aria-label={say('Why nothing was poured into {sump}', { sump })}
      onSubmit={(event) => {
        event.preventDefault()
        write(reasonWith(reason, words))
      }}
    >
      <Taps
        legend={say('Why not?')}
        name="why-not"
        value={reason}
        choices={notPouredReasons.map((text) => [text, say(text)])}
        onPick={setReason}
      />
      <TextField label={say('A word more, if there is one')} value={words} onInput={setWords} />
      <div class="buttons">
        <button type="submit" class="main" disabled={reason === null && words.trim() === ''}>
          {say('Write it down')}
        </button>
        <button type="button" class="plain" onClick={cancel}>
          {say('Back')}
        </button>
      </div>
    </form>
  )
}
