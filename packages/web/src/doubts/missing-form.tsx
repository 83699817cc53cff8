import { say } from '@sumpbook/fluid'
import { useId, useState } from 'preact/hooks'
import type { Entry, ShopOfBook, SumpNow } from '../api/types.ts'
import type { Stamp } from '../entry/stamp.ts'
import { FaultWords, SelectField, TextField } from '../fields/fields.tsx'
import { readerOf, shopUnits } from '../say/units.ts'
import type { MissingDraft, MissingKind } from './answers.ts'
import { hasStrength, hasWater, missingEntry, missingKinds, missingTexts, readMissing } from './missing-entry.ts'

interface MissingFormProps {
  draft: MissingDraft
  sump: SumpNow
  shop: ShopOfBook
  isBusy: boolean
  write(build: (stamp: Stamp) => Entry): void
  cancel(): void
}

/** The entry that nobody wrote, filled in as far as the records tell; a person looks it over and writes it down. */
export function MissingForm({ draft, sump, shop, isBusy, write, cancel }: MissingFormProps) {
  const { units, timeZone } = shop
  const [texts, setTexts] = useState(() => missingTexts(draft, units, timeZone))
  const [isTried, setTried] = useState(false)
  const timeField = useId()
  const reader = readerOf(units)
  const read = readMissing(texts, { units, timeZone, now: Date.now() })
  const { what } = texts
  const needsVolume = what === 'concentrate' || what === 'drawoff'
  const volumeFault =
    'fault' in read.volume
      ? read.volume.fault
      : isTried && needsVolume && read.volume.value === null
        ? { found: say('nothing'), expected: say(shopUnits[units].volumeName) }
        : null
  const change = (more: Partial<typeof texts>) => setTexts({ ...texts, ...more })
  return (
    <form
      class="pour-form"
      aria-label={say('The entry that is missing')}
      onSubmit={(event) => {
        event.preventDefault()
        setTried(true)
        const context = { units, timeZone, now: Date.now(), reader }
        const isWhole = (stamp: Stamp) => missingEntry(texts, sump, { ...context, stamp })
        const blank: Stamp = { at: '', recordedAt: '', newId: () => '' }
        if (isWhole(blank) !== null) write((stamp) => isWhole(stamp)!)
      }}
    >
      <SelectField
        label={say('What happened')}
        value={what}
        onInput={(picked) => change({ what: picked as MissingKind })}
        choices={missingKinds.map(([kind, words]) => [kind, say(words)] as const)}
      />
      <TextField
        numeric
        label={say('How much, {unit}', { unit: say(shopUnits[units].volumeName) })}
        value={texts.volume}
        onInput={(volume) => change({ volume })}
        fault={volumeFault}
        {...(needsVolume ? {} : { hint: say('Empty: nobody measured it') })}
      />
      {hasStrength(what) && (
        <TextField
          numeric
          label={say('Strength poured, %')}
          value={texts.strength}
          onInput={(strength) => change({ strength })}
          fault={'fault' in read.strength ? read.strength.fault : null}
          hint={say('Empty: not known')}
        />
      )}
      {hasWater(what) && sump.bench.waters.length > 0 && (
        <SelectField
          label={say('Water')}
          value={texts.water}
          onInput={(water) => change({ water })}
          choices={[['', say('not known')], ...sump.bench.waters.map(({ id, name }) => [id, name] as const)]}
        />
      )}
      <div class="field">
        <label for={timeField}>{say('When')}</label>
        <input
          id={timeField}
          type="datetime-local"
          value={texts.at}
          aria-invalid={'fault' in read.at ? 'true' : undefined}
          onInput={(event) => change({ at: event.currentTarget.value })}
        />
        {'fault' in read.at && <FaultWords fault={read.at.fault} />}
        <div class="hint">{say('About will do: after the visit before, if nobody knows')}</div>
      </div>
      <div class="buttons">
        <button type="submit" class="main" disabled={isBusy}>
          {say('Write it down')}
        </button>
        <button type="button" class="plain" onClick={cancel}>
          {say('Back')}
        </button>
      </div>
    </form>
  )
}
