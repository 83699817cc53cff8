/**
 * The things of a shop: what entries point at. In a book file each kind is a section with its present state;
 * what changed, and from when, stands in `setup` entries.
 */
import { container } from './container.ts'
import { fluid } from './fluid.ts'
import { instrument } from './instrument.ts'
import { meter } from './meter.ts'
import { mixer } from './mixer.ts'
import { shop } from './shop.ts'
import { sump } from './sump.ts'
import { wasteContainer } from './waste-container.ts'
import { water } from './water.ts'

export type { Container } from './container.ts'
export type { Fluid } from './fluid.ts'
export type { Guidance } from './guidance.ts'
export type { Instrument } from './instrument.ts'
export type { Limits } from './limits.ts'
export type { Meter } from './meter.ts'
export type { Mixer } from './mixer.ts'
export type { Shop } from './shop.ts'
export type { Sump } from './sump.ts'
export type { WasteContainer } from './waste-container.ts'
export type { Water } from './water.ts'

/** Every kind of thing with an id, its schema, and its section of the book file, in the order of that file. */
export const thingKinds = {
  fluid: { section: 'fluids', schema: fluid },
  water: { section: 'waters', schema: water },
  sump: { section: 'sumps', schema: sump },
  container: { section: 'containers', schema: container },
  mixer: { section: 'mixers', schema: mixer },
  instrument: { section: 'instruments', schema: instrument },
  meter: { section: 'meters', schema: meter },
  waste: { section: 'wasteContainers', schema: wasteContainer },
} as const

export type ThingKind = keyof typeof thingKinds

export { container, fluid, instrument, meter, mixer, shop, sump, water }
