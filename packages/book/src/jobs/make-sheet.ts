import {
  type ChangeOver,
  type CleanoutSheet,
  changeOver,
  cleanoutSheet,
  type FluidTold,
  type Reader,
  type SheetContext,
  type ShutdownKind,
  sayCautions,
  sayCleanoutStep,
  sayShutdownStep,
  shutdownSheet,
} from '@sumpbook/fluid'
import { startOfDay } from '../journal/calendar.ts'
import type { Sump } from '../schema/things/index.ts'
import type { Things } from '../setup/things.ts'
import { benchOf } from '../today/bench.ts'
import type { PlannedStep, SheetKind } from './job-types.ts'
import { type CleanoutValues, cleanoutValues, standstillValues } from './sheet-values.ts'

/** A sheet for one sump, ready to be worked by. */
export interface MadeSheet {
  steps: PlannedStep[]
  /** The figures behind a cleanout; null of other sheets. */
  cleanout: Extract<CleanoutSheet, { outcome: 'sheet' }> | null
  change: ChangeOver | null
}

/** What a sheet is made from. */
export interface SheetParts {
  things: Things
  /** UTC text. */
  at: string
  reader: Reader
  sump: Sump | null
}

/** From so many litres on somebody could get into it (common practice, no source). */
const enterableFrom = 1000

/** @returns null where what the job was opened with makes no sheet */
export function makeSheet(kind: SheetKind, values: unknown, parts: SheetParts, extraRinses = 0): MadeSheet | null {
  if (kind !== 'cleanout' && kind !== 'change-over') return standstillSheet(kind, values, parts)
  const parsed = cleanoutValues.safeParse(values)
  if (!parsed.success || parts.sump === null || parsed.data.heldBack >= parsed.data.volume) return null
  return cleanoutOf(parsed.data, { ...parts, sump: parts.sump }, extraRinses)
}

function cleanoutOf(values: CleanoutValues, parts: SheetParts & { sump: Sump }, extraRinses: number): MadeSheet | null {
  const { things, sump } = parts
  const change = changeOf(values, things)
  const { strongest, solids = null, foul = null, ...figures } = values
  const sheet = cleanoutSheet({
    ...figures,
    ...(strongest === undefined ? {} : { strongest }),
    rinses: values.rinses + extraRinses,
    solids,
    foul,
    metals: sump.metals ?? null,
    enterable: sump.kind === 'central' || (sump.capacity ?? values.volume) >= enterableFrom,
    changeOver: change,
  })
  if (sheet.outcome !== 'sheet') return null
  const context = contextOf(values, change, parts)
  const steps = sheet.steps.map((step): PlannedStep => {
    const words = sayCleanoutStep(step, sheet, context)
    const { id, signs, asks, hours, volume, pour } = step
    return { id, ...words, signs, asks, hours, volume, pour, writes: writesOf(step.stage, sheet, values, sump) }
  })
  return { steps, cleanout: sheet, change }
}

function changeOf({ fluid, fromFluid }: CleanoutValues, { fluid: fluids }: Things): ChangeOver | null {
  if (fromFluid === undefined || fluid === undefined) return null
  const told = (id: string): FluidTold => ({
    id,
    class: fluids.get(id)?.class ?? null,
    contains: fluids.get(id)?.contains ?? null,
  })
  return changeOver(told(fromFluid), told(fluid))
}

function contextOf(
  values: CleanoutValues,
  change: ChangeOver | null,
  { things, at, reader, sump }: SheetParts & { sump: Sump },
): SheetContext {
  const fluid = values.fluid ?? sump.fluid
  const { container, measure } = benchOf(sump, { fluid, lot: null }, things, at)
  const water = values.water === undefined ? undefined : things.water.get(values.water)?.name
  return {
    ...reader,
    fluid: things.fluid.get(fluid)?.name ?? fluid,
    ...(values.cleaner === undefined || values.cleaner === '' ? {} : { cleaner: values.cleaner }),
    ...(water === undefined ? {} : { water }),
    container,
    measure,
    changeOver: change,
  }
}

const hundredth = (value: number) => Number(value.toFixed(2))

/** The facts that a step's doing makes: the cleanout itself and the fresh charge, and another fluid in the sump. */
function writesOf(
  stage: string,
  { quantities }: Extract<CleanoutSheet, { outcome: 'sheet' }>,
  values: CleanoutValues,
  sump: Sump,
): PlannedStep['writes'] {
  const fluid = values.fluid ?? sump.fluid
  if (stage === 'charge') {
    const { volume, strength } = quantities.charge
    return [
      {
        kind: 'cleanout',
        ...(values.cleaner === undefined ? {} : { cleaner: values.cleaner }),
        cleanerPercent: values.cleanerPercent,
        hours: values.hours,
        rinses: quantities.fills.filter((fill) => fill.stage === 'rinse').length,
        wasteVolume: hundredth(quantities.waste),
      },
      {
        kind: 'charge',
        volume: hundredth(volume),
        strength: hundredth(strength),
        fluid,
        ...(values.water === undefined ? {} : { water: values.water }),
        heldBack: hundredth(values.heldBack),
      },
    ]
  }
  if (stage !== 'label' || fluid === sump.fluid) return []
  return [{ kind: 'setup', about: { kind: 'sump', id: sump.id }, changes: { fluid }, was: { fluid: sump.fluid } }]
}

function standstillSheet(kind: ShutdownKind, values: unknown, { sump, things }: SheetParts): MadeSheet {
  const { from, to } = standstillValues.safeParse(values ?? {}).data ?? {}
  const instant = (day: string) => startOfDay(day, things.shop.timeZone)
  const idle = {
    kind: 'idle',
    ...(from === undefined ? {} : { from: instant(from) }),
    ...(to === undefined ? {} : { to: instant(to) }),
  }
  const steps = shutdownSheet(kind).map(
    ({ cautions, ...step }): PlannedStep => ({
      ...step,
      ...sayShutdownStep(step),
      cautions: sayCautions(cautions),
      hours: 0,
      volume: 0,
      pour: null,
      writes: step.id === 'idle' && sump !== null && from !== undefined ? [idle] : [],
    }),
  )
  return { steps, cleanout: null, change: null }
}
