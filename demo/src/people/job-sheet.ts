import { fluidOf } from '../shop/fluids.ts'
import { brixOf } from '../simulate/refractometer.ts'
import { instantText } from '../simulate/shop-days.ts'
import type { ShopRun } from '../simulate/shop-run.ts'
import { toStep } from '../simulate/steps.ts'
import type { SumpRun } from '../simulate/sump-run.ts'
import { heelOf } from './charge.ts'
import { early, keeper } from './roster.ts'

/** A cleanout's sheet is opened, for a day. @returns the job, named by the entry that opens it */
export function openSheet(shop: ShopRun, run: SumpRun, ms: number, { onMs }: { onMs: number }): string {
  const { id: sump, fillVolume, fluid } = run.plan.document
  const values = {
    volume: fillVolume,
    heldBack: heelOf(run),
    cleaner: 'Alkaline system cleaner',
    cleanerPercent: 2,
    hours: 4,
    rinsePercent: 2,
    rinseFraction: 0.4,
    rinses: 1,
    target: run.target,
    strongest: fluidOf(fluid).maxMixStrength ?? 20,
    fluid,
    water: 'tap',
    on: instantText(shop.days, onMs).slice(0, 10),
  }
  const fields = { step: 'opened', sheet: 'cleanout', values }
  return shop.journal.write({ kind: 'signoff', sump, atMs: ms, by: keeper, opensJob: true, fields })
}

/** Steps of the sheet by the hour after the pumps were stopped. */
const steps = [
  ['ready', -0.5],
  ['skim', -0.2],
  ['lock-out', -0.1],
  ['drain', 0.5],
  ['sludge', 1],
  ['cleaner', 3.5],
  ['cleaner-drain', 3.9],
  ['rinse-1', 5],
  ['rinse-check', 6.1],
  ['charge', 6.5],
  ['first-readings', 7],
] as const

/** Signed as it was worked, up to the slide that accepts it. */
export function signSheet(
  shop: ShopRun,
  run: SumpRun,
  job: string,
  { ms, lot, slideAfterDays }: { ms: number; lot: string; slideAfterDays: number | null },
): void {
  const { id: sump, fluid } = run.plan.document
  const sign = (step: string, atMs: number, by: string, values?: Record<string, unknown>) => {
    const fields = { step, job, ...(values === undefined ? {} : { values }) }
    shop.journal.write({ kind: 'signoff', sump, atMs, by, fields })
  }
  const read: Readonly<Record<string, Record<string, unknown>>> = {
    skim: { oil: 1 },
    'rinse-check': { freshPh: 9.2, rinsePh: 9.1, look: 'clear', smell: 'none' },
    charge: { lot },
    'first-readings': { brix: toStep(brixOf(fluidOf(fluid), run.target), 0.2), ph: 9.2 },
  }
  for (const [step, hours] of steps) {
    sign(step, ms + hours * 3_600_000, step === 'rinse-check' ? keeper : early, read[step])
  }
  if (slideAfterDays === null) return
  const slideMs = ms + slideAfterDays * 24 * 3_600_000
  shop.agenda.put(slideMs, () => sign('later-slide', slideMs, keeper, { bacteria: { below: 1000 } }))
}
