import type { CautionId } from '../cautions/index.ts'
import type { Litres } from '../quantities.ts'
import { requireRange } from '../require.ts'
import type { ChangeOver } from './change-over.ts'
import { type CleanoutAsked, type CleanoutPour, type CleanoutQuantities, cleanoutQuantities } from './cleanout.ts'
import { type DrainWay, drainWay } from './drain-way.ts'

/** What is done at a step. */
export type CleanoutStage =
  | 'supplier-word'
  | 'ready'
  | 'skim'
  | 'lock-out'
  | 'drain'
  | 'sludge'
  | 'cleaner'
  | 'cleaner-drain'
  | 'rinse'
  | 'heel-out'
  | 'rinse-check'
  | 'charge'
  | 'label'
  | 'first-readings'
  | 'later-slide'

/** What is asked of whoever signs a step. */
export type SheetFigure = 'freshPh' | 'rinsePh' | 'look' | 'smell' | 'brix' | 'ph' | 'bacteria' | 'oil' | 'lot'

export interface CleanoutStep {
  /** The stage, numbered where there are several: `rinse-2`. */
  id: string
  stage: CleanoutStage
  /** Litres moved: poured, or drained. */
  volume: Litres
  /** What is poured; null where nothing is. */
  pour: CleanoutPour | null
  /** For how long, about. */
  hours: number
  /** Whether somebody stands by; cleaner circulates alone. */
  attended: boolean
  /** Whether the machine stands for it. */
  stands: boolean
  cautions: CautionId[]
  signs: 'operator' | 'keeper'
  asks: SheetFigure[]
}

/** What a sheet is made for. */
export interface SheetAsked extends CleanoutAsked {
  /** For which the cleaner runs, 0 or more. */
  hours: number
  solids: 'little' | 'much' | null
  /** Cut on the machine; null where nobody said. */
  metals: readonly string[] | null
  /** Whether somebody could get into it: a pit, a tank, a central system. */
  enterable: boolean
  /** Whether much has grown in it; null where nobody looked. */
  foul: boolean | null
  /** Litres an hour that the filling hose gives; 900 without it (common practice). */
  fillPerHour?: number
  /** Where another fluid comes in; null where the same does. */
  changeOver: ChangeOver | null
}

/** A job sheet in figures; its words are made where it is read. */
export type CleanoutSheet =
  | {
      outcome: 'sheet'
      steps: CleanoutStep[]
      quantities: Extract<CleanoutQuantities, { outcome: 'quantities' }>
      way: DrainWay
      /** For which the machine stands. */
      downtimeHours: number
      /** Of these, somebody stands by. */
      labourHours: number
    }
  | Extract<CleanoutQuantities, { outcome: 'unreachable' }>

/** About how long steps take that no quantity decides, hours (common practice, no source). */
const usual = { skim: 0.5, lockOut: 0.25, setUp: 0.25, sludge: 1, muchSludge: 2, run: 0.5, check: 0.25, readings: 0.25 }

/**
 * The steps of a cleanout in their order, each with its quantities, about how long it takes, who signs, and what to mind. Tramp oil comes off
 * first, chips and sludge are out before any alkaline cleaner, and the sheet stays open until a slide of one or two weeks later is read.
 *
 *     hours of a drain = litres / litres an hour of its way, of a filling = litres / litres an hour of the hose, and what is set up or run
 *
 * Source: order and times are common practice, no source; quantities by {@link cleanoutQuantities}.
 *
 * @throws {RangeError} a quantity outside the range its field gives
 */
export function cleanoutSheet(asked: SheetAsked): CleanoutSheet {
  requireRange('hours', asked.hours, { min: 0, max: 1000 })
  const { fillPerHour = 900 } = asked
  requireRange('fillPerHour', fillPerHour, { above: 0 })
  const quantities = cleanoutQuantities(asked)
  if (quantities.outcome === 'unreachable') return quantities
  const way = drainWay(asked)
  const steps = stepsOf(asked, quantities, {
    drain: (litres) => usual.setUp + litres / way.perHour,
    fill: (litres) => litres / fillPerHour,
  })
  const sum = (of: readonly CleanoutStep[]) => of.reduce((total, { hours }) => total + hours, 0)
  const stands = steps.filter((step) => step.stands)
  return {
    outcome: 'sheet',
    steps,
    quantities,
    way,
    downtimeHours: sum(stands),
    labourHours: sum(stands.filter(({ attended }) => attended)),
  }
}

interface Pace {
  drain(litres: Litres): number
  fill(litres: Litres): number
}

function stepsOf(
  asked: SheetAsked,
  { fills, drained, charge }: Extract<CleanoutQuantities, { outcome: 'quantities' }>,
  pace: Pace,
): CleanoutStep[] {
  const { changeOver, solids, foul, enterable } = asked
  const isNew = changeOver !== null && changeOver.outcome !== 'same-product'
  const cleaner = fills[0]!.pour
  const rinses = fills.filter(({ stage }) => stage === 'rinse')
  const entering: CautionId[] = enterable ? ['confinedSpace'] : []
  const killing: CautionId[] = foul === false ? [] : ['endotoxin']
  const steps: CleanoutStep[] = []
  if (isNew) {
    const cautions: CautionId[] =
      changeOver.outcome === 'never-meet' && changeOver.because.includes('nitrite-and-amines')
        ? ['nitriteWithAmines']
        : []
    steps.push(step('supplier-word', { stands: false, cautions }))
  }
  steps.push(
    step('ready', { stands: false, cautions: ['skin'] }),
    step('skim', { hours: usual.skim, asks: ['oil'], cautions: foul === false ? [] : ['rottenEggGas'] }),
    step('lock-out', { hours: usual.lockOut, cautions: ['handsIn', ...entering] }),
    step('drain', {
      hours: pace.drain(drained[0]!),
      volume: drained[0]!,
      cautions: ['drawnOffIsWaste', 'acidOrBleach'],
    }),
    step('sludge', {
      hours: solids === 'much' ? usual.muchSludge : usual.sludge,
      cautions: ['handsIn', 'skin', ...metalCautions(asked.metals), ...entering],
    }),
    step('cleaner', {
      hours: pace.fill(cleaner.volume) + asked.hours,
      volume: cleaner.volume,
      pour: cleaner,
      attended: false,
      cautions: ['cleanerSheet', 'acidOrBleach', ...killing],
    }),
    step('cleaner-drain', {
      hours: pace.drain(drained[1]!),
      volume: drained[1]!,
      cautions: ['handsIn', 'cleanerSheet', 'drawnOffIsWaste'],
    }),
    ...rinses.map(({ pour }, n) =>
      step('rinse', {
        id: `rinse-${n + 1}`,
        hours: pace.fill(pour.volume) + usual.run + pace.drain(pour.volume),
        volume: pour.volume,
        pour,
        cautions: ['concentrateLast', 'drawnOffIsWaste'],
      }),
    ),
  )
  if (isNew) steps.push(step('heel-out', { hours: usual.sludge, cautions: ['handsIn'] }))
  steps.push(
    step('rinse-check', { hours: usual.check, asks: ['freshPh', 'rinsePh', 'look', 'smell'] }),
    step('charge', {
      hours: pace.fill(charge.volume) + usual.run,
      volume: charge.volume,
      pour: charge,
      asks: ['lot'],
      cautions: ['concentrateLast'],
    }),
  )
  if (isNew) steps.push(step('label', { stands: false }))
  steps.push(
    step('first-readings', { hours: usual.readings, asks: ['brix', 'ph'], cautions: ['mist'] }),
    step('later-slide', { stands: false, asks: ['bacteria'], cautions: ['grownSlide', 'coughStops'] }),
  )
  return steps
}

/** The steps whose signature says that somebody judged them: an operator may do them, and a keeper signs. */
export const judgedStages: readonly CleanoutStage[] = ['supplier-word', 'rinse-check', 'label', 'later-slide']

const step = (stage: CleanoutStage, more: Partial<CleanoutStep>): CleanoutStep => ({
  id: stage,
  stage,
  volume: 0,
  pour: null,
  hours: 0,
  attended: true,
  stands: true,
  cautions: [],
  signs: judgedStages.includes(stage) ? 'keeper' : 'operator',
  asks: [],
  ...more,
})

/** Of metals that nobody named it may be any. */
function metalCautions(metals: readonly string[] | null): CautionId[] {
  const has = (word: RegExp) => metals === null || metals.some((metal) => word.test(metal))
  return [
    ...(has(/alumin|magnesium/i) ? (['alkalineOnFines'] as const) : []),
    ...(metals !== null && has(/magnesium/i) ? (['magnesiumHydrogen'] as const) : []),
  ]
}
