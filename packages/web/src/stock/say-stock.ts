import { datesLocale, message, say, sayNumber, sayVolume } from '@sumpbook/fluid'
import type { Units } from '../api/types.ts'
import { readerOf } from '../say/units.ts'
import type { FluidStock } from './answers.ts'

/** "12 Jan 2027". */
export const sayDayText = (day: string): string => formatIn(datesLocale()).format(new Date(`${day}T12:00:00Z`))

/** Making a format takes far longer than using it: each is made once. */
const formats = new Map<string, Intl.DateTimeFormat>()

function formatIn(locale: string): Intl.DateTimeFormat {
  const known = formats.get(locale)
  if (known !== undefined) return known
  const format = new Intl.DateTimeFormat(locale, {
    timeZone: 'UTC',
    day: 'numeric',
    month: 'short',
    year: 'numeric',
  })
  formats.set(locale, format)
  return format
}

/** A sentence that begins with the name of what it is about, without it: the name stands above. */
export const withoutName = (sentence: string, name: string): string =>
  sentence.startsWith(`${name}: `) ? sentence.slice(name.length + 2) : sentence

/** What counts as used, and why. */
export function sayUsedBy({ usedBy, usedBySet }: Pick<FluidStock, 'usedBy' | 'usedBySet'>): string {
  const what =
    usedBy === 'issues'
      ? say('Drums count as used when they are issued; pours are held against them.')
      : say('What is poured counts as used.')
  const why = usedBySet
    ? say('The shop chose so.')
    : usedBy === 'issues'
      ? say('So it is as long as issues are written.')
      : say('So it is as long as no issue is written.')
  return `${what} ${why}`
}

const movementWords = {
  receipt: message('received {amount}'),
  issue: message('issued {amount}'),
  count: message('counted {amount}'),
  order: message('ordered {amount}'),
  pour: message('poured {amount}'),
} as const

/** "received 400 L, lot B-418". */
export function sayMovement({ kind, litres, lot }: FluidStock['movements'][number], units: Units): string {
  const amount = litres === null ? say('an unmeasured amount') : sayVolume(litres, readerOf(units))
  const moved = say(movementWords[kind], { amount })
  return lot === null ? moved : `${moved}, ${say('lot {lot}', { lot })}`
}

/** What orders are reckoned with, each with whether it is the shop's own or assumed. */
export function saySettings(
  { settings, safetyStock, reorderPoint }: Pick<FluidStock, 'settings' | 'safetyStock' | 'reorderPoint'>,
  { units, money }: { units: Units; money(amount: number): string },
): { name: string; value: string; assumed: boolean }[] {
  const reader = readerOf(units)
  const { packSize, leadDays, leadSd, service, orderCost, holdingPercent } = settings
  const tenth = (value: number) => sayNumber(value, 1, {}, 0)
  return [
    { name: say('Drum'), value: sayVolume(packSize.value, reader), assumed: packSize.assumed },
    {
      name: say('From order to delivery'),
      value: say('{days} days, give or take {spread}', { days: tenth(leadDays.value), spread: tenth(leadSd.value) }),
      assumed: leadDays.assumed || leadSd.assumed,
    },
    {
      name: say('Chance of not running out meanwhile'),
      value: `${tenth(service.value)} %`,
      assumed: service.assumed,
    },
    {
      name: say('An order costs'),
      value: orderCost === null ? say('not known: an order is four weeks’ use') : money(orderCost),
      assumed: orderCost === null,
    },
    {
      name: say('A year in store costs'),
      value: say('{percent} % of the price', { percent: tenth(holdingPercent.value) }),
      assumed: holdingPercent.assumed,
    },
    ...(reorderPoint === null || safetyStock === null
      ? []
      : [
          {
            name: say('So the next order is due at'),
            value: say('{volume}, {safety} of it against bad luck', {
              volume: sayVolume(reorderPoint, reader),
              safety: sayVolume(safetyStock, reader),
            }),
            assumed: false,
          },
        ]),
  ]
}
