import type { Leak } from './network.ts'

/** Where a sign is met. */
export const signFamilies = {
  look: 'Look of the fluid',
  smell: 'Smell',
  oil: 'Oil on top',
  parts: 'Parts and tools',
  machine: 'Machine and sump',
  people: 'People',
} as const
export type SignFamily = keyof typeof signFamilies

/** One sign as people tick it and as entries have it. */
export interface Sign {
  /** The word in entries: English, never changed once published. */
  id: string
  family: SignFamily
  /** What is asked at the machine. */
  question: string
  /** How often it is met with nothing wrong that the tables know. */
  leak: Leak
  /** Other words that entries have for it. */
  also?: readonly string[]
}

/**
 * The published list of signs: the only words that the diagnosis understands in an `observation`. Words are added, never
 * changed or taken away; entries with other words are kept and named as not understood.
 */
export const signs = [
  {
    id: 'foam',
    family: 'look',
    question: 'Foam that does not fall back?',
    leak: 'now and then',
    also: ['foaming', 'excessive foam'],
  },
  {
    id: 'scum',
    family: 'look',
    question: 'Scum or curds floating?',
    leak: 'hardly ever',
    also: ['soap scum', 'curds'],
  },
  {
    id: 'emulsion split',
    family: 'look',
    question: 'Split: oil and water apart?',
    leak: 'hardly ever',
    also: ['split', 'split emulsion', 'separation', 'emulsion separating'],
  },
  {
    id: 'cream on top',
    family: 'look',
    question: 'Cream on top after standing?',
    leak: 'now and then',
    also: ['creaming'],
  },
  {
    id: 'grey-black colour',
    family: 'look',
    question: 'Grey or black?',
    leak: 'now and then',
    also: ['grey', 'black', 'gray-black colour', 'gray or black', 'grey colour', 'black colour', 'dark colour'],
  },
  {
    id: 'yellow-brown colour',
    family: 'look',
    question: 'Yellow or brown?',
    leak: 'now and then',
    also: ['yellow', 'brown', 'yellow or brown', 'brown colour'],
  },
  {
    id: 'thin and clear',
    family: 'look',
    question: 'Thinner and clearer than fresh?',
    leak: 'now and then',
    also: ['watery', 'pale'],
  },
  {
    id: 'dirt',
    family: 'look',
    question: 'Dirty, fines in it?',
    leak: 'now and then',
    also: ['dirty', 'fines', 'swarf in the fluid', 'dirty fluid'],
  },
  {
    id: 'slime',
    family: 'look',
    question: 'Slime or stringy growth?',
    leak: 'hardly ever',
    also: ['biofilm', 'mould', 'mold', 'stringy growth', 'floating matter', 'fungal growth'],
  },
  {
    id: 'gas bubbles',
    family: 'look',
    question: 'Gas bubbling up from the chips?',
    leak: 'hardly ever',
    also: ['bubbling chips', 'fizzing'],
  },
  {
    id: 'sour smell',
    family: 'smell',
    question: 'Sour or musty?',
    leak: 'now and then',
    also: ['sour', 'musty smell', 'musty'],
  },
  {
    id: 'rancid smell',
    family: 'smell',
    question: 'Rancid, like a locker room?',
    leak: 'hardly ever',
    also: ['rancid', 'foul smell', 'bad smell', 'monday-morning smell', 'rotten smell', 'odour', 'odor'],
  },
  {
    id: 'rotten-egg smell',
    family: 'smell',
    question: 'Rotten eggs?',
    leak: 'hardly ever',
    also: ['rotten eggs', 'rotten egg smell', 'hydrogen sulfide smell', 'h2s smell', 'hydrogen-sulfide smell'],
  },
  { id: 'ammonia smell', family: 'smell', question: 'Ammonia?', leak: 'hardly ever', also: ['ammonia'] },
  { id: 'solvent smell', family: 'smell', question: 'Solvent or paraffin?', leak: 'hardly ever', also: ['solvent'] },
  {
    id: 'oil film',
    family: 'oil',
    question: 'A film?',
    leak: 'commonly',
    also: ['oil on the surface', 'tramp oil on the surface', 'oil sheen'],
  },
  {
    id: 'oil layer',
    family: 'oil',
    question: 'A closed layer?',
    leak: 'hardly ever',
    also: ['closed oil layer', 'thick oil layer', 'tramp oil', 'tramp oil layer'],
  },
  {
    id: 'rust on parts',
    family: 'parts',
    question: 'Rust on parts?',
    leak: 'now and then',
    also: ['rust', 'corrosion', 'rusty parts'],
  },
  {
    id: 'rust on the machine',
    family: 'parts',
    question: 'Rust on table or machine?',
    leak: 'hardly ever',
    also: ['machine rust', 'rust on machine'],
  },
  {
    id: 'stains on aluminium',
    family: 'parts',
    question: 'Stains on aluminium?',
    leak: 'hardly ever',
    also: ['stains on aluminum', 'aluminium stains', 'staining of aluminium'],
  },
  {
    id: 'stains on copper',
    family: 'parts',
    question: 'Stains on copper or brass, blue-green fluid?',
    leak: 'hardly ever',
    also: ['stains on brass', 'copper stains', 'blue-green fluid'],
  },
  {
    id: 'sticky residue',
    family: 'parts',
    question: 'Sticky residue?',
    leak: 'now and then',
    also: ['sticky', 'gummy residue', 'residue'],
  },
  {
    id: 'deposits',
    family: 'parts',
    question: 'Hard or white deposits?',
    leak: 'now and then',
    also: ['white deposits', 'white residue', 'scale', 'mineral deposits'],
  },
  {
    id: 'poor finish',
    family: 'parts',
    question: 'Finish worse than before?',
    leak: 'now and then',
    also: ['bad finish', 'poor surface finish'],
  },
  {
    id: 'short tool life',
    family: 'parts',
    question: 'Tools wear sooner?',
    leak: 'now and then',
    also: ['tool wear', 'poor tool life'],
  },
  {
    id: 'filter blocked',
    family: 'machine',
    question: 'Filter or strainer blocked?',
    leak: 'now and then',
    also: ['blocked filter', 'clogged filter', 'blocked strainer'],
  },
  {
    id: 'weak jet',
    family: 'machine',
    question: 'Jets weak or uneven?',
    leak: 'now and then',
    also: ['low flow', 'weak flow'],
  },
  {
    id: 'pump draws air',
    family: 'machine',
    question: 'Pump noisy, air in the jet?',
    leak: 'hardly ever',
    also: ['pump noise', 'air in the lines'],
  },
  {
    id: 'level low',
    family: 'machine',
    question: 'Level low?',
    leak: 'commonly',
    also: ['low level', 'low sump level'],
  },
  {
    id: 'level high',
    family: 'machine',
    question: 'Level above the mark?',
    leak: 'hardly ever',
    also: ['high level', 'overflow'],
  },
  {
    id: 'water dripping in',
    family: 'machine',
    question: 'Water running or dripping in?',
    leak: 'hardly ever',
    also: ['water leak'],
  },
  {
    id: 'oil leak on the machine',
    family: 'machine',
    question: 'Way oil or hydraulics leaking?',
    leak: 'now and then',
    also: ['hydraulic leak', 'way oil leak'],
  },
  {
    id: 'fluid hot',
    family: 'machine',
    question: 'Fluid hotter than usual?',
    leak: 'now and then',
    also: ['hot fluid'],
  },
  {
    id: 'mist in the air',
    family: 'machine',
    question: 'Mist standing in the air?',
    leak: 'now and then',
    also: ['mist', 'visible mist'],
  },
  {
    id: 'paint lifting',
    family: 'machine',
    question: 'Paint blistering or lifting?',
    leak: 'hardly ever',
    also: ['paint blistering'],
  },
  {
    id: 'stood idle',
    family: 'machine',
    question: 'Stood still for days?',
    leak: 'commonly',
    also: ['stood still', 'idle', 'standing idle'],
  },
  {
    id: 'fresh charge',
    family: 'machine',
    question: 'Filled new in the last days?',
    leak: 'commonly',
    also: ['new charge', 'fresh fill', 'first fill'],
  },
  {
    id: 'just cleaned',
    family: 'machine',
    question: 'Cleaned out just before?',
    leak: 'now and then',
    also: ['after cleanout', 'after cleaning'],
  },
  {
    id: 'light-metal fines',
    family: 'machine',
    question: 'Magnesium or aluminium fines where cleaner goes in?',
    leak: 'hardly ever',
    also: ['magnesium fines', 'aluminium fines', 'magnesium chips', 'light metal fines'],
  },
  {
    id: 'skin irritation',
    family: 'people',
    question: 'Skin itching, red or cracked?',
    leak: 'hardly ever',
    also: ['skin rash', 'dermatitis', 'rash', 'skin complaint', 'skin complaints'],
  },
  {
    id: 'eye or throat irritation',
    family: 'people',
    question: 'Eyes, nose or throat sting?',
    leak: 'hardly ever',
    also: ['eye irritation', 'throat irritation', 'nose irritation'],
  },
  {
    id: 'cough or chest tightness',
    family: 'people',
    question: 'Cough, wheeze or tight chest?',
    leak: 'hardly ever',
    also: ['cough', 'chest tightness', 'wheeze', 'shortness of breath', 'breathing trouble'],
  },
  {
    id: 'fever or aching after work',
    family: 'people',
    question: 'Fever, chills or aching after work?',
    leak: 'hardly ever',
    also: ['fever', 'flu-like after work', 'chills'],
  },
] as const satisfies readonly Sign[]

/** A word of the published list. */
export type SignId = (typeof signs)[number]['id']

const byWord: ReadonlyMap<string, SignId> = new Map(
  signs.flatMap((sign): [string, SignId][] =>
    [sign.id, ...('also' in sign ? sign.also : [])].map((word) => [word, sign.id]),
  ),
)

/** The sign that a word of an entry means; null where the list has none. Case and blanks at the ends do not count. */
export const signCalled = (word: string): SignId | null => byWord.get(word.trim().toLowerCase()) ?? null

/** Words of entries as signs of the list, each once, and those that it does not have. */
export function readSigns(words: readonly string[]): { signs: SignId[]; notUnderstood: string[] } {
  const read = words.map((word) => ({ word, sign: signCalled(word) }))
  return {
    signs: [...new Set(read.flatMap(({ sign }) => (sign === null ? [] : [sign])))],
    notUnderstood: [...new Set(read.flatMap(({ word, sign }) => (sign === null ? [word] : [])))],
  }
}

/** Signs that are no fault by themselves: they lend weight to others. */
export const circumstances: readonly string[] = ['stood idle', 'fresh charge', 'just cleaned'] satisfies SignId[]

/** What a round asks for at every sump: an observation without any sign says that none of these was there. */
export const roundSigns = [
  'foam',
  'emulsion split',
  'dirt',
  'sour smell',
  'rancid smell',
  'rotten-egg smell',
  'oil film',
  'oil layer',
] as const satisfies readonly SignId[]
