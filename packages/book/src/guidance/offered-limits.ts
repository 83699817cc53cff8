import {
  type GermClasses,
  type LimitEnd,
  type LimitedQuantity,
  type LimitLevel,
  type OfferedLimit,
  type SettledLimit,
  say,
  saySource,
  settledLimits,
} from '@sumpbook/fluid'
import type { Fluid, Limits, Sump } from '../schema/things/index.ts'
import type { Things } from '../setup/things.ts'
import type { ShopGuidance } from './shop-guidance.ts'
import type { ToldOfTests } from './told-tests.ts'

/**
 * Every limit of a sump with the level and the source it comes from: guidance, the shop, the fluid in it, the work done on it, the sump.
 *
 * @param everywhere what holds for every sump, made once for all of them
 */
export function limitsOfSump(
  sump: Sump,
  told: Pick<ToldOfTests, 'charges' | 'job'>,
  { things, guidance, everywhere }: { things: Things; guidance: ShopGuidance; everywhere: readonly OfferedLimit[] },
): SettledLimit[] {
  const fluid = things.fluid.get(told.charges.at(-1)?.fluid ?? sump.fluid)
  return settledLimits([
    ...everywhere,
    ...(fluid === undefined ? [] : ofLimits(fluid.limits, 'fluid', say('limits of {name}', { name: fluid.name }))),
    ...ofWork(guidance, sump, told),
    ...ofLimits(sump.limits, 'sump', say('limits of {name}', { name: sump.name })),
  ]).toSorted((a, b) => quantities.indexOf(a.quantity) - quantities.indexOf(b.quantity))
}

/** What guidance and shop set for every sump. */
export const limitsEverywhere = (guidance: ShopGuidance): OfferedLimit[] => [
  ...ofGuidance(guidance),
  ...ofShop(guidance),
]

/** The limit of one kind that holds; null without one. */
export const limitOf = (limits: readonly SettledLimit[], quantity: LimitedQuantity, end: LimitEnd) =>
  limits.find((limit) => limit.quantity === quantity && limit.end === end) ?? null

/** The classes of germs that hold, and whose they are; null where no level says what is poor. */
export function germClassesOf(limits: readonly SettledLimit[]): { classes: GermClasses; source: string } | null {
  const [reasonable, poor] = [limitOf(limits, 'bacteria', 'reasonable'), limitOf(limits, 'bacteria', 'poor')]
  if (poor === null || !(poor.value > 0)) return null
  const good = reasonable === null || !(reasonable.value > 0) ? null : Math.min(reasonable.value, poor.value)
  return { classes: { reasonable: good, poor: poor.value }, source: (good === null ? poor : reasonable!).source }
}

/** In the order in which they are shown. */
const quantities: readonly LimitedQuantity[] = [
  'concentration',
  'level',
  'ph',
  'nitrite',
  'bacteria',
  'hardness',
  'chloride',
  'conductivity',
  'trampOil',
  'waterNitrate',
]

/** Rules of the edition that are limits of a sump; mist is the air's. */
function ofGuidance({ rules }: ShopGuidance): OfferedLimit[] {
  return rules.flatMap(({ test, says, binding, source }): OfferedLimit[] => {
    const quantity = quantities.find((one) => one === test)
    if (quantity === undefined) return []
    const offer = (end: LimitEnd, value: number | null | undefined): OfferedLimit[] =>
      value == null ? [] : [{ quantity, end, value, binding, level: 'guidance', source: saySource(source) }]
    if (says.kind === 'ends') return [...offer('low', says.low), ...offer('high', says.high)]
    if (says.kind === 'fall') return offer(says.asks, says.by)
    if (says.kind !== 'classes') return []
    return [...offer('reasonable', says.classes.reasonable), ...offer('poor', says.classes.poor)]
  })
}

function ofShop({ own }: ShopGuidance): OfferedLimit[] {
  const offer = (quantity: LimitedQuantity, end: LimitEnd, value: number | undefined): OfferedLimit[] =>
    value === undefined
      ? []
      : [{ quantity, end, value, level: 'shop', source: say('the shop’s own values'), binding: false }]
  return [
    ...offer('ph', 'low', own.ph?.low),
    ...offer('ph', 'act', own.ph?.act),
    ...offer('ph', 'change', own.ph?.change),
    ...offer('nitrite', 'high', own.nitrite?.high),
    ...offer('bacteria', 'reasonable', own.bacteria?.reasonable),
    ...offer('bacteria', 'poor', own.bacteria?.poor),
    ...offer('hardness', 'high', own.hardness?.high),
    ...offer('waterNitrate', 'high', own.waterNitrate?.high),
  ]
}

/** What fits the last job that was written down, or the metals that are cut on it. */
function ofWork({ forWork }: ShopGuidance, { metals = [] }: Sump, { job }: Pick<ToldOfTests, 'job'>): OfferedLimit[] {
  const materials = job?.material === undefined ? metals : [job.material]
  const isOf = (wanted: string | undefined, found: readonly string[]) =>
    wanted === undefined || found.some((one) => one.toLowerCase() === wanted.toLowerCase())
  return forWork
    .filter(
      ({ material, process }) =>
        (material !== undefined || process !== undefined) &&
        isOf(material, materials) &&
        isOf(process, job?.process === undefined ? [] : [job.process]),
    )
    .flatMap(({ material, process, limits }) => {
      const work = [material, process].filter((part) => part !== undefined).join(', ')
      return ofLimits(limits, 'work', say('the shop’s limits for {work}', { work }))
    })
}

/** Limits as fluids, sumps and work carry them. More germs than the highest wanted are poor. */
function ofLimits(limits: Limits | Fluid['limits'], level: LimitLevel, source: string): OfferedLimit[] {
  return Object.entries(limits ?? {}).flatMap(([name, ends]): OfferedLimit[] => {
    const quantity = quantities.find((one) => one === name)
    if (quantity === undefined || typeof ends !== 'object' || ends === null) return []
    return Object.entries(ends).flatMap(([end, value]): OfferedLimit[] => {
      if (typeof value !== 'number' || !(end === 'low' || end === 'target' || end === 'high')) return []
      const meant = quantity === 'bacteria' && end === 'high' ? 'poor' : end
      return [{ quantity, end: meant, value, level, source, binding: false }]
    })
  })
}
