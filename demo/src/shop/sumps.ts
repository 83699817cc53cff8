import type { SumpDocument } from '../book-document.ts'

/** A sump of the example: what its book says of it, what it is really like, and how people treat it. */
export interface SumpPlan {
  document: SumpDocument
  nature: SumpNature
  habits: SumpHabits
  ending: Ending
}

/** What the book does not know. */
export interface SumpNature {
  /** Litres on a running day in ordinary weather. */
  evaporation: number
  /** Litres on a running day of an ordinary job. */
  carryOff: number
  /** True litres to a litre of the book's mark and dip table: nameplates err, sludge takes room. */
  volumeScale: number
  /** True litres in the lines to a litre of the book's. */
  holdUpScale: number
  /** Litres of tramp oil on a running day. */
  trampOil: number
  /** Hours of the day the machine runs. */
  shift: { from: number; to: number }
}

export interface SumpHabits {
  /** Topped up once it looks emptier than this share of the mark. */
  topUpBelow: number
  /** How pours are made and written down. */
  pouredBy: 'bucket' | 'jug' | 'hose' | 'to-mark' | 'meter'
  /** Rounds a week on which it is read. */
  readings: 'every-round' | 'weekly'
  water: 'tap' | 'deionised'
  /** Whether the book begins with a fresh charge of it. */
  chargedAtStart: boolean
}

/** How it is to stand on the last day. */
export type Ending = 'in-order' | 'lean' | 'rich' | 'low' | 'unread' | 'at-mark' | 'oil'

type Sizes = Pick<SumpDocument, 'fillVolume' | 'capacity' | 'minVolume' | 'holdUp' | 'surfaceArea'>
const sizes = (
  fillVolume: number,
  capacity: number,
  minVolume: number,
  holdUp: number,
  surfaceArea: number,
): Sizes => ({
  fillVolume,
  capacity,
  minVolume,
  holdUp,
  surfaceArea,
})

const twoShifts = { from: 6, to: 22 }
const oneShift = { from: 6, to: 14.5 }

/** The machines of the example shop in walking order. */
export const sumpPlans: readonly SumpPlan[] = [
  {
    document: {
      id: 'tc1',
      name: 'Turning centre 1',
      kind: 'stand-alone',
      machines: ['Turning centre 1'],
      fluid: 'blue-40',
      ...sizes(240, 310, 100, 25, 0.9),
      place: 'Hall A',
      order: 1,
      metals: ['steel'],
    },
    nature: { evaporation: 6, carryOff: 2.6, volumeScale: 0.93, holdUpScale: 1.1, trampOil: 0.1, shift: twoShifts },
    habits: { topUpBelow: 0.88, pouredBy: 'bucket', readings: 'every-round', water: 'tap', chargedAtStart: true },
    ending: 'in-order',
  },
  {
    document: {
      id: 'tc2',
      name: 'Turning centre 2',
      kind: 'stand-alone',
      machines: ['Turning centre 2'],
      fluid: 'blue-40',
      ...sizes(180, 235, 75, 15, 0.7),
      place: 'Hall A',
      order: 2,
      metals: ['steel', 'brass'],
    },
    nature: { evaporation: 4, carryOff: 3.4, volumeScale: 0.9, holdUpScale: 1, trampOil: 0.07, shift: twoShifts },
    habits: { topUpBelow: 0.9, pouredBy: 'bucket', readings: 'every-round', water: 'tap', chargedAtStart: true },
    ending: 'lean',
  },
  {
    document: {
      id: 'slide3',
      name: 'Sliding-head lathe 3',
      kind: 'stand-alone',
      machines: ['Sliding-head lathe 3'],
      fluid: 'grey-25',
      ...sizes(120, 165, 50, 8, 0.5),
      dipTable: [
        [0, 0],
        [50, 18],
        [100, 40],
        [200, 88],
        [260, 120],
        [340, 165],
      ],
      place: 'Hall A',
      order: 3,
      metals: ['steel'],
    },
    nature: { evaporation: 2.8, carryOff: 2, volumeScale: 0.88, holdUpScale: 1.2, trampOil: 0.05, shift: twoShifts },
    habits: { topUpBelow: 0.88, pouredBy: 'jug', readings: 'every-round', water: 'tap', chargedAtStart: true },
    ending: 'in-order',
  },
  {
    document: {
      id: 'mill4',
      name: 'Mill 4',
      kind: 'stand-alone',
      machines: ['Mill 4'],
      fluid: 'grey-25',
      ...sizes(320, 420, 130, 35, 1.3),
      place: 'Hall A',
      order: 4,
      metals: ['aluminium', 'steel'],
    },
    nature: { evaporation: 12, carryOff: 3, volumeScale: 0.95, holdUpScale: 1, trampOil: 0.08, shift: twoShifts },
    habits: { topUpBelow: 0.9, pouredBy: 'hose', readings: 'every-round', water: 'tap', chargedAtStart: true },
    ending: 'rich',
  },
  {
    document: {
      id: 'mill5',
      name: 'Mill 5',
      kind: 'stand-alone',
      machines: ['Mill 5'],
      fluid: 'grey-25',
      ...sizes(200, 265, 90, 20, 0.8),
      dipTable: [
        [0, 0],
        [60, 26],
        [120, 58],
        [240, 124],
        [375, 200],
        [485, 265],
      ],
      place: 'Hall A',
      order: 5,
      metals: ['aluminium'],
    },
    nature: { evaporation: 5, carryOff: 4, volumeScale: 0.96, holdUpScale: 1.1, trampOil: 0.06, shift: twoShifts },
    habits: { topUpBelow: 0.88, pouredBy: 'bucket', readings: 'every-round', water: 'tap', chargedAtStart: true },
    ending: 'low',
  },
  {
    document: {
      id: 'mill7',
      name: 'Mill 7',
      kind: 'stand-alone',
      machines: ['Mill 7'],
      fluid: 'grey-25',
      ...sizes(480, 620, 190, 60, 1.8),
      dipTable: [
        [0, 0],
        [80, 62],
        [160, 136],
        [320, 288],
        [520, 480],
        [665, 620],
      ],
      place: 'Hall B',
      order: 6,
      metals: ['aluminium', 'steel'],
    },
    nature: { evaporation: 13, carryOff: 5, volumeScale: 0.94, holdUpScale: 0.9, trampOil: 0.12, shift: twoShifts },
    habits: { topUpBelow: 0.9, pouredBy: 'hose', readings: 'every-round', water: 'tap', chargedAtStart: true },
    ending: 'in-order',
  },
  {
    document: {
      id: 'mill8',
      name: 'Five-axis mill 8',
      kind: 'stand-alone',
      machines: ['Five-axis mill 8'],
      fluid: 'grey-25',
      ...sizes(360, 470, 140, 45, 1.4),
      place: 'Hall B',
      order: 7,
      metals: ['aluminium', 'titanium'],
    },
    nature: { evaporation: 9, carryOff: 4, volumeScale: 0.9, holdUpScale: 1.1, trampOil: 0.1, shift: twoShifts },
    habits: {
      topUpBelow: 0.88,
      pouredBy: 'to-mark',
      readings: 'every-round',
      water: 'deionised',
      chargedAtStart: true,
    },
    ending: 'in-order',
  },
  {
    document: {
      id: 'grinder',
      name: 'Surface grinder',
      kind: 'stand-alone',
      machines: ['Surface grinder'],
      fluid: 'clear-10',
      ...sizes(150, 200, 60, 10, 0.9),
      place: 'Hall B',
      order: 8,
      metals: ['hardened steel'],
    },
    nature: { evaporation: 5.5, carryOff: 1.2, volumeScale: 0.92, holdUpScale: 1, trampOil: 0.01, shift: oneShift },
    habits: { topUpBelow: 0.9, pouredBy: 'bucket', readings: 'every-round', water: 'deionised', chargedAtStart: true },
    ending: 'in-order',
  },
  {
    document: {
      id: 'saw',
      name: 'Band saw',
      kind: 'stand-alone',
      machines: ['Band saw'],
      fluid: 'blue-40',
      ...sizes(60, 80, 20, 4, 0.4),
      place: 'Bar store',
      order: 9,
      metals: ['steel'],
    },
    nature: { evaporation: 0.8, carryOff: 0.6, volumeScale: 0.9, holdUpScale: 1, trampOil: 0.015, shift: oneShift },
    habits: { topUpBelow: 0.85, pouredBy: 'jug', readings: 'weekly', water: 'tap', chargedAtStart: false },
    ending: 'unread',
  },
  {
    document: {
      id: 'central',
      name: 'Central system',
      kind: 'central',
      machines: ['Drill cell 1', 'Drill cell 2', 'Tapping cell', 'Transfer line'],
      fluid: 'grey-25',
      ...sizes(4200, 5400, 1600, 450, 7),
      place: 'Hall C',
      order: 10,
      turnoverHours: 0.2,
      metals: ['cast iron', 'steel'],
    },
    nature: { evaporation: 75, carryOff: 36, volumeScale: 0.97, holdUpScale: 1.05, trampOil: 0.9, shift: twoShifts },
    habits: { topUpBelow: 0.95, pouredBy: 'meter', readings: 'every-round', water: 'deionised', chargedAtStart: false },
    ending: 'at-mark',
  },
  {
    document: {
      id: 'gun-drill',
      name: 'Gun drill',
      kind: 'stand-alone',
      machines: ['Gun drill'],
      fluid: 'oil-22',
      ...sizes(350, 450, 140, 30, 1),
      place: 'Hall C',
      order: 11,
      metals: ['steel'],
    },
    nature: { evaporation: 0, carryOff: 1.8, volumeScale: 1, holdUpScale: 1, trampOil: 0, shift: oneShift },
    habits: { topUpBelow: 0.92, pouredBy: 'jug', readings: 'weekly', water: 'tap', chargedAtStart: false },
    ending: 'oil',
  },
  {
    document: {
      id: 'lathe12',
      name: 'Bench lathe 12',
      kind: 'stand-alone',
      machines: ['Bench lathe 12'],
      fluid: 'blue-40',
      ...sizes(45, 60, 15, 3, 0.3),
      place: 'Training corner',
      order: 12,
      metals: ['steel', 'aluminium'],
    },
    nature: { evaporation: 0.9, carryOff: 0.45, volumeScale: 0.95, holdUpScale: 1, trampOil: 0.008, shift: oneShift },
    habits: { topUpBelow: 0.88, pouredBy: 'jug', readings: 'every-round', water: 'tap', chargedAtStart: true },
    ending: 'in-order',
  },
]
