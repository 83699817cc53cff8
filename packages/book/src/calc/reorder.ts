import { reorder, say, sayNumber, sayVolume } from '@sumpbook/fluid'
import { z } from 'zod'
import { calculation } from './calculation.ts'

const service = z
  .number()
  .min(0.5)
  .lt(100)
  .refine((value) => value < 1 || value >= 50, {
    error: 'a share from 0.5 to below 1, or a percentage from 50 to below 100',
  })
  .describe('chance of not running out while a delivery is awaited: 0.95, or 95 for 95 %')

/** When to order concentrate, and how much. */
export const reorderCalculation = calculation({
  name: 'reorder',
  summary: 'safety stock, reorder point and order quantity',
  input: z.strictObject({
    dailyMean: z.number().min(0).describe('litres a day'),
    dailySd: z.number().min(0).describe('of a day’s litres'),
    leadDays: z.number().min(0).describe('days from order to delivery'),
    leadSd: z.number().min(0).default(0),
    service,
    orderCost: z.number().min(0).describe('money for an order, whatever its size').optional(),
    holdingCostPerYear: z.number().gt(0).describe('money for a litre kept a year').optional(),
    packSize: z.number().gt(0).describe('litres of a drum; without it any amount can be ordered').optional(),
  }),
  run: ({ orderCost = null, holdingCostPerYear = null, packSize = null, ...input }) => {
    const share = input.service < 1 ? input.service : input.service / 100
    const found = reorder({ ...input, service: share, orderCost, holdingCostPerYear, packSize })
    return { ...found, notes: notesOf(found, share) }
  },
  say: ({ safetyStock, reorderPoint, orderQuantity, packs, notes }, reader) => [
    say('Order when stock and what is on its way are down to {volume}, {safety} of it against bad luck.', {
      volume: sayVolume(reorderPoint, reader),
      safety: sayVolume(safetyStock, reader),
    }),
    orderQuantity === null
      ? ''
      : packs === null
        ? say('Order {volume}.', { volume: sayVolume(orderQuantity, reader) })
        : say('Order {volume}, {packs} × the pack.', {
            volume: sayVolume(orderQuantity, reader),
            packs: sayNumber(packs, 0, reader),
          }),
    ...notes,
  ],
})

function notesOf({ economicQuantity, orderQuantity, packs }: ReturnType<typeof reorder>, share: number): string[] {
  const percent = sayNumber(100 * share, 2, {}, 0)
  const notes = [
    say(
      'In {percent} of a hundred waits for a delivery the shelf does not run empty; it is not the share of litres had in time.',
      { percent },
    ),
  ]
  if (orderQuantity === null)
    notes.push(say('Without the cost of an order and of keeping a litre a year there is no cheapest quantity.'))
  if (packs === 0) notes.push(say('Nothing is used: there is nothing to order.'))
  if (packs !== null && packs > 0 && economicQuantity !== null) {
    notes.push(
      say('The cheapest quantity is {litres} L; whole packs beside it cost nearly the same.', {
        litres: sayNumber(economicQuantity, 1),
      }),
    )
  }
  return notes
}
