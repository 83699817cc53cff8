import { sayCautions } from '../cautions/index.ts'
import { type RinseFault, samePh } from '../cleanout/acceptance.ts'
import type { ApartBecause, ChangeOver } from '../cleanout/change-over.ts'
import type { CleanoutPour } from '../cleanout/cleanout.ts'
import type { DrainWay } from '../cleanout/drain-way.ts'
import type { CleanoutSheet, CleanoutStep } from '../cleanout/sheet.ts'
import { type Container, dispense } from '../recipe/containers.ts'
import { message, say } from '../words/index.ts'
import { lowerFirst, sayList } from './phrases.ts'
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
  'supplier-word': message('Ask both suppliers'),
  ready: message('Lay out what it takes'),
  skim: message('Skim the tramp oil'),
  'lock-out': message('Run the conveyor empty, stop, lock out'),
  drain: message('Drain the old fluid'),
  sludge: message('Chips and sludge out'),
  cleaner: message('Run the cleaner'),
  'cleaner-drain': message('Drain the cleaner'),
  rinse: message('Rinse with weak fluid'),
  'heel-out': message('What stays in corners out too'),
  'rinse-check': message('Judge the rinse'),
  charge: message('Fill the fresh charge'),
  label: message('Change the label and the book'),
  'first-readings': message('First readings'),
  'later-slide': message('Slide after one to two weeks'),
}

const titleOf = ({ stage, id }: CleanoutStep) =>
  stage === 'rinse' && id !== 'rinse-1' ? say('Rinse with weak fluid, again') : say(titles[stage])

function textOf(step: CleanoutStep, sheet: Sheet, context: SheetContext): string {
  const { quantities, way } = sheet
  switch (step.stage) {
    case 'supplier-word':
      return context.changeOver == null ? '' : sayChangeOver(context.changeOver).join(' ')
    case 'ready':
      return readyWords(sheet, context)
    case 'skim':
      return say(
        'Let it stand for a quarter of an hour, take the oil off the top and keep it apart: drained with the coolant it smears everything.',
      )
    case 'lock-out':
      return say('Conveyor empty, pumps off, switched off, locked, tagged, tried.')
    case 'drain':
      return `${say('{volume} come out.', { volume: sayVolume(step.volume, context) })} ${wayWords(way, context)}`
    case 'sludge':
      return say(
        'Shovel and wipe out conveyor tunnel, under plates, corners, filter housings, chip basket and strainer. Before the cleaner, never after it.',
      )
    case 'cleaner':
      return say(
        '{pour} Run it for {hours} in all, filling included: through every pump, branch, wash-down hose, chiller and through-spindle unit. Open each of them for some minutes; nothing is cut meanwhile.',
        {
          pour: pourWords(step.pour!, context.cleaner ?? say('cleaner'), say('water'), context),
          hours: sayHours(step.hours, context),
        },
      )
    case 'cleaner-drain':
      return say('{volume} come out, hoses and low points too. Wipe what has come loose.', {
        volume: sayVolume(step.volume, context),
      })
    case 'rinse':
      return say(
        '{pour} Read the pH of it before you pour. Run it for half an hour through the same lines, then drain all {volume}.',
        {
          pour: pourWords(step.pour!, context.fluid ?? say('concentrate'), say('water'), context),
          volume: sayVolume(step.volume, context),
        },
      )
    case 'heel-out':
      return say(
        'Open the low points, blow out lines and hoses, empty filter housings, pick up the rest with a wet vacuum and wipe dry. A part that cannot be reached is named to the suppliers.',
      )
    case 'rinse-check':
      return say(
        '{residue} That alone accepts nothing: its pH at the drain beside the pH as poured, its look and its smell do. Not clear, or more than {ph} above: rinse again.',
        { residue: residueWords(sheet, context), ph: sayNumber(samePh, 1, context) },
      )
    case 'charge':
      return say('{pour} With the rinse in the corners the whole then stands at {strength}. Run it for half an hour.', {
        pour: pourWords(
          step.pour!,
          context.fluid ?? say('concentrate'),
          context.water === undefined ? say('water') : lowerFirst(context.water),
          context,
        ),
        strength: sayPercent(quantities.fills.at(-1)!.contents.fluid, context),
      })
    case 'label':
      return say(
        'On each system: fluid, working concentration, volume of the circuit, biocide and its dose (DGUV Regel 109-003, 6.3.1.1). In the book: the sump’s fluid, before anybody reads by the old factor.',
      )
    case 'first-readings':
      return say(
        'Level, °Brix, pH, look and smell after half an hour of circulation. This pH is the fresh value from which later falls are counted.',
      )
    case 'later-slide':
      return say(
        'A dip slide between one and two weeks after the fresh charge. Until it is read the sheet stays open: growth that is back so soon was left in a corner.',
      )
  }
}

function readyWords({ quantities: { fills, waste } }: Sheet, context: SheetContext): string {
  const of = (isCleaner: boolean) => fills.filter(({ stage }) => (stage === 'cleaner') === isCleaner)
  const sum = (list: typeof fills, what: 'concentrate' | 'water') =>
    list.reduce((total, { pour }) => total + pour[what], 0)
  const parts = [
    [sum(of(true), 'concentrate'), context.cleaner ?? say('cleaner')],
    [sum(of(false), 'concentrate'), context.fluid ?? say('concentrate')],
    [sum(fills, 'water'), say('water')],
  ] as const
  return say(
    '{parts}; empty containers for {waste} of waste, and for oil and sludge beside them. Gloves, goggles, locks and tags, pH strips, a dip slide, refractometer.',
    {
      parts: sayList(
        parts.map(([volume, what]) => say('{volume} of {what}', { volume: sayVolume(volume, context), what })),
      ),
      waste: sayVolume(waste, context),
    },
  )
}

function wayWords({ way, hard }: DrainWay, context: SheetContext): string {
  const rest = () =>
    say('Under about {volume} bailing gets hard: a wet vacuum takes the rest.', { volume: sayVolume(hard, context) })
  switch (way) {
    case 'vacuum-truck':
      return say('A vacuum truck: it takes sludge that no pump lifts. Have it there before the machine stops.')
    case 'pump':
      return `${say('A pump into closed containers.')} ${rest()}`
    case 'drum-and-hand':
      return `${say('By hand into a drum.')} ${rest()}`
  }
}

/** As many buckets as somebody carries. */
const mostBuckets = 12

function pourWords(pour: CleanoutPour, product: string, water: string, context: SheetContext): string {
  if (pour.volume === 0) return say('Nothing is poured.')
  const volume = sayVolume(pour.volume, context)
  if (pour.concentrate === 0) return say('{volume} of {water}.', { volume, water })
  const { part, rest } = sayParts(pour.volume, pour.concentrate, context)
  const strength = sayStrength(pour.strength, context)
  const words = say('{volume} at {strength}: {rest} of {water}, then {part} of {product} into it.', {
    volume,
    strength,
    rest,
    water,
    part,
    product,
  })
  const { container = null, measure = null } = context
  if (container === null) return words
  const measured = dispense({ ...pour, waters: [], hardness: null }, container, measure ?? container)
  if (measured.buckets > mostBuckets) return words
  const buckets = say(
    'In buckets of {size}: {water, select, both {{full, plural, other {# full}} and {rest} of water} full {{full, plural, other {# full}} of water} other {{rest} of water}}, {concentrate} of {product} last.',
    {
      size: sayVolume(container.capacity, context),
      water: measured.fullWater === 0 ? 'rest' : measured.restWater === 0 ? 'full' : 'both',
      full: measured.fullWater,
      rest: sayVolume(measured.restWater, context),
      concentrate: sayVolume(measured.concentrate, context),
      product,
    },
  )
  return `${words} ${buckets}`
}

function residueWords({ quantities: { afterRinses } }: Sheet, reader: Reader): string {
  const { oldFluid, cleaner } = afterRinses
  return say(
    'By mass balance what stays in the corners holds {old} of the old fluid’s strength and {cleaner} of cleaner.',
    { old: sayShare(oldFluid, reader), cleaner: sayShare(cleaner, reader) },
  )
}

/** A small share with two digits that count. */
function sayShare(percent: number, reader: Reader): string {
  if (percent === 0) return say('nothing')
  const decimals = Math.min(6, Math.max(1, 1 - Math.floor(Math.log10(percent))))
  return `${sayNumber(percent, decimals, reader, 0)} %`
}

/** Hours to the tenth, minutes where it is less than one. */
export function sayHours(hours: number, reader: Pick<Reader, 'locale'> = {}): string {
  const minutes = Math.round((hours * 60) / 5) * 5
  return minutes < 60
    ? say('{minutes} minutes', { minutes: sayNumber(Math.max(minutes, hours > 0 ? 5 : 0), 0, reader) })
    : `${sayNumber(hours, 1, reader, 0)} h`
}

/** What waste, hours and money a cleanout takes, a sentence. */
export function sayCleanout(sheet: Sheet, reader: Reader): string {
  const { quantities, downtimeHours, labourHours, steps } = sheet
  const rinses = quantities.fills.filter(({ stage }) => stage === 'rinse').length
  return say(
    '{steps, plural, one {# step} other {# steps}} with {rinses, plural, one {# rinse} other {# rinses}}: the machine stands for about {stands}, somebody stands by for {labour}, and {waste} become waste.',
    {
      steps: steps.length,
      rinses,
      stands: sayHours(downtimeHours, reader),
      labour: sayHours(labourHours, reader),
      waste: sayVolume(quantities.waste, reader),
    },
  )
}

const apartWords: Record<ApartBecause, string> = {
  'oil-and-water': message('One is a straight oil, the other mixed with water: neither bears the other.'),
  'nitrite-and-amines': message('One carries nitrite, the other amines.'),
  'contents-unknown': message('What they contain is not in the book: look at both safety data sheets, section 3.'),
  'other-class': message('They are of different kinds.'),
  'other-product': message('They are different products of one kind, which says nothing of what they do together.'),
}

/** What a change of the fluid asks for, a sentence each. */
export function sayChangeOver(change: ChangeOver): string[] {
  if (change.outcome === 'same-product') return [say('The same product: what stays in the corners is only older.')]
  const because = change.because.map((reason) => say(apartWords[reason]))
  return change.outcome === 'never-meet'
    ? [
        say('These two must not meet, not even what stays in the corners.'),
        ...because,
        say('Clean out, get the heel out and wipe dry; the suppliers say what else.'),
      ]
    : [
        say('Whether these two bear each other only their suppliers know: get their word in writing first.'),
        ...because,
        say('Clean out in full, the heel too.'),
      ]
}

const rinseFaults: Record<RinseFault, string> = {
  'cleaner-left': message(
    'The pH at the drain is more than {ph} above that of the weak fluid as poured: cleaner is left.',
  ),
  'still-dirty': message('It comes out dirty.'),
  'still-smells': message('It smells.'),
}

/** Why a rinse is not accepted yet, a sentence each. */
export const sayRinseFaults = (faults: readonly RinseFault[]): string[] => [
  ...faults.map((fault) => say(rinseFaults[fault], { ph: sayNumber(samePh, 1) })),
  say('Rinse again before anything fresh goes in.'),
]
