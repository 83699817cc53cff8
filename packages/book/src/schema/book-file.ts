import { z } from 'zod'
import { entry, unknownEntry } from './entries/index.ts'
import { shop, thingKinds } from './things/index.ts'

export const bookFormat = 'sumpbook-book/1'

/**
 * A whole book in one document: the shop and its things as they are now, and every entry ever written.
 * Unknown fields are kept, given back and warned of.
 */
export const bookFile = z.looseObject({
  format: z.literal(bookFormat),
  shop: shop.optional(),
  fluids: z.array(thingKinds.fluid.schema).optional(),
  waters: z.array(thingKinds.water.schema).optional(),
  sumps: z.array(thingKinds.sump.schema).optional(),
  containers: z.array(thingKinds.container.schema).optional(),
  mixers: z.array(thingKinds.mixer.schema).optional(),
  instruments: z.array(thingKinds.instrument.schema).optional(),
  meters: z.array(thingKinds.meter.schema).optional(),
  wasteContainers: z.array(thingKinds.waste.schema).optional(),
  entries: z.array(entry).optional(),
  /** Entries whose subject this book does not know (yet); kept, and counted nowhere. */
  quarantine: z.array(unknownEntry).optional(),
})

export type BookFile = z.infer<typeof bookFile>
