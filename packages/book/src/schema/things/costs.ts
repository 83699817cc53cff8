import { z } from 'zod'
import { notNegative } from '../values.ts'

const money = notNegative
const minutes = z.number().min(0).max(1440)

/** One stream of waste, as the pickups name it, and what getting rid of it costs. */
const wastePrice = z.looseObject({
  stream: z.string().min(1),
  perLitre: money.optional(),
  /** Where the carrier weighs it; wins over `perLitre` for pickups with a weight. */
  perKilogram: money.optional(),
})

/** An additive by its name, as the additions say it. */
const additivePrice = z.looseObject({ name: z.string().min(1), perLitre: money })

/**
 * What the shop says its work costs, in its currency. Nothing here has a figure of its own: what is missing is not counted, and
 * said so. A set-up changes it figure by figure; what a figure was before stays what it was.
 */
export const costs = z.looseObject({
  /** An hour of whoever looks after the coolant. */
  labourPerHour: money.optional(),
  /** An hour for which a machine stands. */
  machinePerHour: money.optional(),
  /** Minutes at a sump on a round, whatever is entered there. */
  minutesPerStop: minutes.optional(),
  /** A litre of system cleaner. */
  cleanerPerLitre: money.optional(),
  additives: z.array(additivePrice).optional(),
  /** Every stream that has no price of its own. */
  wastePerLitre: money.optional(),
  wasteStreams: z.array(wastePrice).optional(),
  /** Each time the carrier comes. */
  wastePerPickup: money.optional(),
  /** What a day on which a sump stands under its band costs the shop in rework and shortened life, by its own experience. */
  leanPerDay: money.optional(),
})

export type Costs = z.infer<typeof costs>
