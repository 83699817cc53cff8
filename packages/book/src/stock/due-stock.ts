import { dayText, say, sayCautions, sayOnDate, sayPacks, sayStock, sayVolume, unitsHere } from '@sumpbook/fluid'
import type { Due } from '../today/due.ts'
import type { DueSource } from '../today/due-sources.ts'
import { type FluidNow, stockOfFluids, wordsOf } from './read-stock.ts'

/** Orders that must go out, deliveries that do not come, drums that are too old, counts that records ask for. */
export const dueStock: DueSource = async (parts, { at, until, reader: asked }) => {
  const { fluids, things, today } = await stockOfFluids(parts, { at, until }, 'where-they-count')
  const reader = { units: unitsHere(things.shop), ...asked, today }
  return fluids
    .filter(({ records }) => records.isKept)
    .flatMap((now) => [
      ...orderDue(now, reader),
      ...lateDue(now, reader),
      ...oldDue(now, reader),
      ...countDue(now, reader),
    ])
}

type DueReader = Parameters<typeof sayStock>[1]

const dueOf = (
  { fluid }: FluidNow,
  due: Pick<Due, 'key' | 'headline' | 'why' | 'dueOn' | 'consequence'> & Partial<Due>,
): Due => ({
  kind: 'stock',
  sump: null,
  about: { kind: 'stock', id: fluid.id },
  name: fluid.name,
  exempt: false,
  cautions: [],
  page: '/stock',
  finish: null,
  ...due,
})

function orderDue(now: FluidNow, reader: DueReader): Due[] {
  const { fluid, ahead, order, settings, onOrder } = now
  if (ahead?.orderBy == null || order === null || ahead.orderBy > reader.today) return []
  const isPressing = ahead.runsOutOn.likely !== null && ahead.runsOutOn.likely <= reader.today + settings.leadDays.value
  return [
    dueOf(now, {
      key: `stock:order:${fluid.id}:${onOrder.length}`,
      headline: say('Order {packs} of {fluid}', {
        packs: sayPacks(order.packs, settings.packSize.value, reader),
        fluid: fluid.name,
      }),
      why: sayStock(wordsOf(now), reader),
      dueOn: dayText(ahead.orderBy),
      consequence: isPressing ? 4 : 6,
      finish: {
        kind: 'order',
        fluid: fluid.id,
        litres: order.litres,
        expectedOn: dayText(reader.today + Math.ceil(settings.leadDays.value)),
      },
    }),
  ]
}

function lateDue(now: FluidNow, reader: DueReader): Due[] {
  return now.onOrder
    .filter(({ expectedOn }) => expectedOn < reader.today)
    .map(({ entry, litres, orderedOn, expectedOn }) =>
      dueOf(now, {
        key: `stock:late:${entry}`,
        headline: say('Ask after {volume} of {fluid}', { volume: sayVolume(litres, reader), fluid: now.fluid.name }),
        why: say('Ordered {orderedOn}, expected {expectedOn}, and not written as received.', {
          orderedOn: sayOnDate(orderedOn, reader),
          expectedOn: sayOnDate(expectedOn, reader),
        }),
        dueOn: dayText(expectedOn + 1),
        consequence: 6,
      }),
    )
}

function oldDue(now: FluidNow, reader: DueReader): Due[] {
  return now.stock.lots.flatMap(({ lot, litres, expiresOn }) => {
    if (expiresOn === null || expiresOn > reader.today) return []
    const drum = { volume: sayVolume(litres, reader), fluid: now.fluid.name }
    return [
      dueOf(now, {
        key: `stock:old:${now.fluid.id}:${lot ?? ''}`,
        headline:
          lot === null
            ? say('Set {volume} of {fluid} of unknown lot apart', drum)
            : say('Set {volume} of {fluid} of lot {lot} apart', { ...drum, lot }),
        why: say('Its shelf life ended {onDay}. Its supplier says whether it may still be used; else it is waste.', {
          onDay: sayOnDate(expiresOn, reader),
        }),
        dueOn: dayText(expiresOn),
        consequence: 7,
        cautions: sayCautions(['oldConcentrate']),
      }),
    ]
  })
}

function countDue(now: FluidNow, reader: DueReader): Due[] {
  const { stock, fluid } = now
  if (stock.missing === 0 && stock.belowNothingOn === null) return []
  const on = stock.belowNothingOn ?? reader.today
  return [
    dueOf(now, {
      key: `stock:count:${fluid.id}`,
      headline: say('Count the drums of {fluid}', { fluid: fluid.name }),
      why: say('More was written as used than the book knows of since {day}; a count puts the stock right.', {
        day: dayText(on),
      }),
      dueOn: dayText(on),
      consequence: 8,
    }),
  ]
}
