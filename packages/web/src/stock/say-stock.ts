import { sayNumber, sayVolume } from '@sumpbook/fluid'
import type { Units } from '../api/types.ts'
import { readerOf } from '../say/units.ts'
import type { FluidStock } from './answers.ts'

/** "12 Jan 2027". */
export const sayDayText = (day: string): string =>
  new Intl.DateTimeFormat('en-GB', { timeZone: 'UTC', day: 'numeric', month: 'short', year: 'numeric' }).format(
    new Date(`${day}T12:00:00Z`),
  )

/** What counts as used, and why. */
export function sayUsedBy({ usedBy, usedBySet }: Pick<FluidStock, 'usedBy' | 'usedBySet'>): string {
  const what =
    usedBy === 'issues'
      ? 'Drums count as used when they are issued; pours are held against them.'
      : 'What is poured counts as used.'
  const why = usedBySet
    ? 'The shop chose so.'
    : usedBy === 'issues'
      ? 'So it is as long as issues are written.'
      : 'So it is as long as no issue is written.'
  return `${what} ${why}`
}

const movementWords = {
  receipt: 'received',
  issue: 'issued',
  count: 'counted',
  order: 'ordered',
  pour: 'poured',
} as const

/** "received 400 L, lot B-418". */
export function sayMovement({ kind, litres, lot }: FluidStock['movements'][number], units: Units): string {
  const amount = litres === null ? 'an unmeasured amount' : sayVolume(litres, readerOf(units))
  return `${movementWords[kind]} ${amount}${lot === null ? '' : `, lot ${lot}`}`
}

/** What orders are reckoned with, each with whether it is the shop's own or assumed. */
export function saySettings(
  { settings, safetyStock, reorderPoint }: Pick<FluidStock, 'settings' | 'safetyStock' | 'reorderPoint'>,
  { units, money }: { units: Units; money(amount: number): string },
): { name: string; value: string; assumed: boolean }[] {
  const reader = readerOf(units)
  const { packSize, leadDays, leadSd, service, orderCost, holdingPercent } = settings
  const days = (value: number) => `${sayNumber(value, 1, {}, 0)} days`
  return [
    { name: 'Drum', value: sayVolume(packSize.value, reader), assumed: packSize.assumed },
    {
      name: 'From order to delivery',
      value: `${days(leadDays.value)}, give or take ${sayNumber(leadSd.value, 1, {}, 0)}`,
      assumed: leadDays.assumed || leadSd.assumed,
    },
    {
      name: 'Chance of not running out meanwhile',
      value: `${sayNumber(service.value, 1, {}, 0)} %`,
      assumed: service.assumed,
    },
    {
      name: 'An order costs',
      value: orderCost === null ? 'not known: an order is four weeks’ use' : money(orderCost),
      assumed: orderCost === null,
    },
    {
      name: 'A year in store costs',
      value: `${sayNumber(holdingPercent.value, 1, {}, 0)} % of the price`,
      assumed: holdingPercent.assumed,
    },
    ...(reorderPoint === null || safetyStock === null
      ? []
      : [
          {
            name: 'So the next order is due at',
            value: `${sayVolume(reorderPoint, reader)}, ${sayVolume(safetyStock, reader)} of it against bad luck`,
            assumed: false,
          },
        ]),
  ]
}
