import { sayCautions } from '../cautions/index.ts'
import type { RinseFault } from '../cleanout/acceptance.ts'
import type { ApartBecause, ChangeOver } from '../cleanout/change-over.ts'
import type { CleanoutPour } from '../cleanout/cleanout.ts'
import type { DrainWay } from '../cleanout/drain-way.ts'
import type { CleanoutSheet, CleanoutStep } from '../cleanout/sheet.ts'
import { type Container, dispense } from '../recipe/containers.ts'
import { lowerFirst, sayCount, sayList } from './phrases.ts'
import { type Reader, sayNumber, sayParts, sayPercent, sayStrength, sayVolume } from './units.ts'

/** What a sheet's sentences are made with. */
export interface SheetContext extends Reader {
  /** Of the fluid that comes in, as people call it. */
  fluid?: string
  cleaner?: string
  /** Of the water for the fresh charge. */
  water?: string
  /** What water is carried in, and what concentrate is measured in. */
  container?: Container | null
  measure?: Container | null
  changeOver?: ChangeOver | null
}

/** A step of a sheet as it is read at the machine. */
export interface StepWords {
  title: string
  text: string
  cautions: string[]
}

type Sheet = Extract<CleanoutSheet, { outcome: 'sheet' }>

/** The words of one step, with its quantities. */
export function sayCleanoutStep(step: CleanoutStep, sheet: Sheet, context: SheetContext): StepWords {
  return { title: titleOf(step), text: textOf(step, sheet, context), cautions: sayCautions(step.cautions) }
}

const titles: Record<CleanoutStep['stage'], string> = {
  'supplier-word': 'Ask both suppliers',
  ready: 'Lay out what it takes',
  skim: 'Skim the tramp oil',
  'lock-out': 'Run the conveyor empty, stop, lock out',
  drain: 'Drain the old fluid',
  sludge: 'Chips and sludge out',
  cleaner: 'Run the cleaner',
  'cleaner-drain': 'Drain the cleaner',
  rinse: 'Rinse with weak fluid',
  'heel-out': 'What stays in corners out too',
  'rinse-check': 'Judge the rinse',
  charge: 'Fill the fresh charge',
  label: 'Change the label and the book',
  'first-readings': 'First readings',
  'later-slide': 'Slide after one to two weeks',
}

const titleOf = ({ stage, id }: CleanoutStep) =>
  stage === 'rinse' && id !== 'rinse-1' ? `${titles.rinse}, again` : titles[stage]

function textOf(step: CleanoutStep, sheet: Sheet, context: SheetContext): string {
  const { quantities, way } = sheet
  switch (step.stage) {
    case 'supplier-word':
      return context.changeOver == null ? '' : sayChangeOver(context.changeOver).join(' ')
    case 'ready':
      return readyWords(sheet, context)
    case 'skim':
      return 'Let it stand for a quarter of an hour, take the oil off the top and keep it apart: drained with the coolant it smears everything.'
    case 'lock-out':
      return 'Conveyor empty, pumps off, switched off, locked, tagged, tried.'
    case 'drain':
      return `${sayVolume(step.volume, context)} come out. ${wayWords(way, context)}`
    case 'sludge':
      return 'Shovel and wipe out conveyor tunnel, under plates, corners, filter housings, chip basket and strainer. Before the cleaner, never after it.'
    case 'cleaner':
      return `${pourWords(step.pour!, context.cleaner ?? 'cleaner', 'water', context)} Run it for ${sayHours(step.hours, context)} in all, filling included: through every pump, branch, wash-down hose, chiller and through-spindle unit. Open each of them for some minutes; nothing is cut meanwhile.`
    case 'cleaner-drain':
      return `${sayVolume(step.volume, context)} come out, hoses and low points too. Wipe what has come loose.`
    case 'rinse':
      return `${pourWords(step.pour!, context.fluid ?? 'concentrate', 'water', context)} Read the pH of it before you pour. Run it for half an hour through the same lines, then drain all ${sayVolume(step.volume, context)}.`
    case 'heel-out':
      return 'Open the low points, blow out lines and hoses, empty filter housings, pick up the rest with a wet vacuum and wipe dry. A part that cannot be reached is named to the suppliers.'
    case 'rinse-check':
      return `${residueWords(sheet, context)} That alone accepts nothing: its pH at the drain beside the pH as poured, its look and its smell do. Not clear, or more than 0.5 above: rinse again.`
    case 'charge':
      return `${pourWords(step.pour!, context.fluid ?? 'concentrate', lowerFirst(context.water ?? 'water'), context)} With the rinse in the corners the whole then stands at ${sayPercent(quantities.fills.at(-1)!.contents.fluid, context)}. Run it for half an hour.`
    case 'label':
      return 'On each system: fluid, working concentration, volume of the circuit, biocide and its dose (DGUV Regel 109-003, 6.3.1.1). In the book: the sump’s fluid, before anybody reads by the old factor.'
    case 'first-readings':
      return 'Level, °Brix, pH, look and smell after half an hour of circulation. This pH is the fresh value from which later falls are counted.'
    case 'later-slide':
      return 'A dip slide between one and two weeks after the fresh charge. Until it is read the sheet stays open: growth that is back so soon was left in a corner.'
  }
}

function readyWords({ quantities: { fills, waste } }: Sheet, context: SheetContext): string {
  const of = (isCleaner: boolean) => fills.filter(({ stage }) => (stage === 'cleaner') === isCleaner)
  const sum = (list: typeof fills, what: 'concentrate' | 'water') =>
    list.reduce((total, { pour }) => total + pour[what], 0)
  const parts = [
    `${sayVolume(sum(of(true), 'concentrate'), context)} of ${context.cleaner ?? 'cleaner'}`,
    `${sayVolume(sum(of(false), 'concentrate'), context)} of ${context.fluid ?? 'concentrate'}`,
    `${sayVolume(sum(fills, 'water'), context)} of water`,
  ]
  return `${sayList(parts)}; empty containers for ${sayVolume(waste, context)} of waste, and for oil and sludge beside them. Gloves, goggles, locks and tags, pH strips, a dip slide, refractometer.`
}

function wayWords({ way, hard }: DrainWay, context: SheetContext): string {
  const rest = `Under about ${sayVolume(hard, context)} bailing gets hard: a wet vacuum takes the rest.`
  switch (way) {
    case 'vacuum-truck':
      return 'A vacuum truck: it takes sludge that no pump lifts. Have it there before the machine stops.'
    case 'pump':
      return `A pump into closed containers. ${rest}`
    case 'drum-and-hand':
      return `By hand into a drum. ${rest}`
  }
}

/** As many buckets as somebody carries. */
const mostBuckets = 12

function pourWords(pour: CleanoutPour, product: string, water: string, context: SheetContext): string {
  if (pour.volume === 0) return 'Nothing is poured.'
  if (pour.concentrate === 0) return `${sayVolume(pour.volume, context)} of ${water}.`
  const { part, rest } = sayParts(pour.volume, pour.concentrate, context)
  const words = `${sayVolume(pour.volume, context)} at ${sayStrength(pour.strength, context)}: ${rest} of ${water}, then ${part} of ${product} into it.`
  const { container = null, measure = null } = context
  if (container === null) return words
  const measured = dispense({ ...pour, waters: [], hardness: null }, container, measure ?? container)
  if (measured.buckets > mostBuckets) return words
  const full = measured.fullWater === 0 ? '' : `${measured.fullWater} full`
  const left = measured.restWater === 0 ? '' : sayVolume(measured.restWater, context)
  return `${words} In buckets of ${sayVolume(container.capacity, context)}: ${[full, left].filter((text) => text !== '').join(' and ')} of water, ${sayVolume(measured.concentrate, context)} of ${product} last.`
}

function residueWords({ quantities: { afterRinses } }: Sheet, reader: Reader): string {
  const { oldFluid, cleaner } = afterRinses
  return `By mass balance what stays in the corners holds ${sayShare(oldFluid, reader)} of the old fluid’s strength and ${sayShare(cleaner, reader)} of cleaner.`
}

/** A small share with two digits that count. */
function sayShare(percent: number, reader: Reader): string {
  if (percent === 0) return 'nothing'
  const decimals = Math.min(6, Math.max(1, 1 - Math.floor(Math.log10(percent))))
  return `${sayNumber(percent, decimals, reader, 0)} %`
}

/** Hours to the tenth, minutes where it is less than one. */
export function sayHours(hours: number, reader: Pick<Reader, 'locale'> = {}): string {
  const minutes = Math.round((hours * 60) / 5) * 5
  return minutes < 60
    ? `${sayNumber(Math.max(minutes, hours > 0 ? 5 : 0), 0, reader)} minutes`
    : `${sayNumber(hours, 1, reader, 0)} h`
}

/** What waste, hours and money a cleanout takes, a sentence. */
export function sayCleanout(sheet: Sheet, reader: Reader): string {
  const { quantities, downtimeHours, labourHours, steps } = sheet
  const rinses = quantities.fills.filter(({ stage }) => stage === 'rinse').length
  return `${sayCount(steps.length, 'step', 'steps')} with ${sayCount(rinses, 'rinse', 'rinses')}: the machine stands for about ${sayHours(downtimeHours, reader)}, somebody stands by for ${sayHours(labourHours, reader)}, and ${sayVolume(quantities.waste, reader)} become waste.`
}

const apartWords: Record<ApartBecause, string> = {
  'oil-and-water': 'One is a straight oil, the other mixed with water: neither bears the other.',
  'nitrite-and-amines': 'One carries nitrite, the other amines.',
  'contents-unknown': 'What they contain is not in the book: look at both safety data sheets, section 3.',
  'other-class': 'They are of different kinds.',
  'other-product': 'They are different products of one kind, which says nothing of what they do together.',
}

/** What a change of the fluid asks for, a sentence each. */
export function sayChangeOver(change: ChangeOver): string[] {
  if (change.outcome === 'same-product') return ['The same product: what stays in the corners is only older.']
  const because = change.because.map((reason) => apartWords[reason])
  return change.outcome === 'never-meet'
    ? [
        'These two must not meet, not even what stays in the corners.',
        ...because,
        'Clean out, get the heel out and wipe dry; the suppliers say what else.',
      ]
    : [
        'Whether these two bear each other only their suppliers know: get their word in writing first.',
        ...because,
        'Clean out in full, the heel too.',
      ]
}

const rinseFaults: Record<RinseFault, string> = {
  'cleaner-left': 'The pH at the drain is more than 0.5 above that of the weak fluid as poured: cleaner is left.',
  'still-dirty': 'It comes out dirty.',
  'still-smells': 'It smells.',
}

/** Why a rinse is not accepted yet, a sentence each. */
export const sayRinseFaults = (faults: readonly RinseFault[]): string[] => [
  ...faults.map((fault) => rinseFaults[fault]),
  'Rinse again before anything fresh goes in.',
]
