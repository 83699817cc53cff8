import { say } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import type { ShopOfBook, Units } from '../api/types.ts'
import { Taps, TextField } from '../fields/fields.tsx'

/** What every page needs to know of a shop. */
export type ShopTexts = Pick<ShopOfBook, 'name' | 'timeZone' | 'units'> & {
  /** Asked for only where it is there. */
  readEveryDays?: number
  /** Asked for only where it is there: `06:00`, several apart by commas. */
  shiftsText?: string
}

/** Where nobody said. */
export const usualEveryDays = 7
const everyDays = [1, 2, 3, 5, 7, 14]

/** As this device is set: its zone; gallons where people are used to them. */
export function shopHere(): ShopTexts {
  return {
    name: '',
    timeZone: Intl.DateTimeFormat().resolvedOptions().timeZone,
    units: /-US\b/.test(navigator.language) ? 'us' : 'metric',
  }
}

const zones = (): readonly string[] => Intl.supportedValuesOf('timeZone')

/** Whether the device knows the zone; the server asks the same. */
export function isTimeZone(zone: string): boolean {
  try {
    new Intl.DateTimeFormat('en', { timeZone: zone })
    return zone.trim() !== ''
  } catch {
    return false
  }
}

/** One shift a day where nobody said. */
export const usualShifts = '06:00'

/** Times of day, early ones first; null where the text is none. */
export function readShifts(text: string): string[] | null {
  const times = text.split(/[\s,;]+/).filter((part) => part !== '')
  const whole = times.map((time) => (/^\d:\d\d$/.test(time) ? `0${time}` : time))
  const isFine = whole.every((time) => /^([01]\d|2[0-3]):[0-5]\d$/.test(time))
  return isFine && whole.length > 0 && whole.length <= 6 ? [...new Set(whole)].sort() : null
}

export function shopFaults({ name, timeZone, shiftsText }: ShopTexts): Record<string, string> {
  return {
    ...(name.trim() === '' ? { name: say('Found nothing; expected a name.') } : {}),
    ...(shiftsText === undefined || readShifts(shiftsText) !== null
      ? {}
      : { shifts: say('Found “{text}”; expected times of day such as 06:00, 14:00.', { text: shiftsText }) }),
    ...(isTimeZone(timeZone)
      ? {}
      : { timeZone: say('Found “{text}”; expected a time zone such as Europe/Berlin.', { text: timeZone }) }),
  }
}

interface ShopPartProps {
  shop: ShopTexts
  faults: Record<string, string>
  change(shop: ShopTexts): void
}

export function TimeZoneField({ shop, faults, change }: ShopPartProps) {
  const [list] = useState(zones)
  return (
    <TextField
      label={say('Time zone')}
      value={shop.timeZone}
      onInput={(timeZone) => change({ ...shop, timeZone })}
      fault={faults.timeZone ?? null}
      list={list}
      hint={say('Days begin and end by it')}
    />
  )
}

export function ShopFields({
  shop,
  faults,
  change,
  isFirst = false,
}: ShopPartProps & {
  /** On the first day the zone is the device’s, and can wait. */
  isFirst?: boolean
}) {
  return (
    <div class="thing-fields">
      <TextField
        label={say('Name of the shop')}
        value={shop.name}
        required
        onInput={(name) => change({ ...shop, name })}
        fault={faults.name ?? null}
        enter={isFirst ? 'next' : undefined}
      />
      {!isFirst && <TimeZoneField shop={shop} faults={faults} change={change} />}
      <Taps
        legend={say('Volumes are typed and shown in')}
        name="units"
        value={shop.units}
        choices={[
          ['metric', say('litres')],
          ['us', say('US gallons')],
          ['imperial', say('imperial gallons')],
        ]}
        onPick={(units) => change({ ...shop, units: units as Units })}
      />
      {shop.shiftsText !== undefined && (
        <TextField
          label={say('Shifts begin at')}
          value={shop.shiftsText}
          onInput={(shiftsText) => change({ ...shop, shiftsText })}
          fault={faults.shifts ?? null}
          hint={say('06:00, 14:00: Today’s list is made anew with each')}
        />
      )}
      {shop.readEveryDays !== undefined && (
        <Taps
          legend={say('Every sump is read again after so many days, sooner where it may leave its band')}
          name="read-every-days"
          value={String(shop.readEveryDays)}
          choices={[...new Set([...everyDays, shop.readEveryDays])]
            .toSorted((a, b) => a - b)
            .map((days) => [String(days), String(days)])}
          onPick={(days) => change({ ...shop, readEveryDays: Number(days) })}
        />
      )}
    </div>
  )
}
