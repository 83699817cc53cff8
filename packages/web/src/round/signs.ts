import { type SignId, sayStop, stopsFor } from '@sumpbook/fluid'

/** What is looked at, smelt and judged at every sump, in the order of the round. */
export type Sense = 'look' | 'smell' | 'oil'

/** One tap for each; null where nobody looked. */
export type Seen = Readonly<Record<Sense, string | null>>

export const notLooked: Seen = { look: null, smell: null, oil: null }

/** The taps, and the sign of the published list that each writes down; "fine" writes nothing. */
export const senses: readonly {
  sense: Sense
  legend: string
  choices: readonly { tap: string; sign: SignId | null }[]
}[] = [
  {
    sense: 'look',
    legend: 'Look',
    choices: [
      { tap: 'fine', sign: null },
      { tap: 'foam', sign: 'foam' },
      { tap: 'split', sign: 'emulsion split' },
      { tap: 'dirty', sign: 'dirt' },
    ],
  },
  {
    sense: 'smell',
    legend: 'Smell',
    choices: [
      { tap: 'fine', sign: null },
      { tap: 'sour', sign: 'sour smell' },
      { tap: 'rancid', sign: 'rancid smell' },
      { tap: 'eggs', sign: 'rotten-egg smell' },
    ],
  },
  {
    sense: 'oil',
    legend: 'Oil on top',
    choices: [
      { tap: 'fine', sign: null },
      { tap: 'film', sign: 'oil film' },
      { tap: 'layer', sign: 'oil layer' },
    ],
  },
]

/** The signs to write down: what is not fine. */
export function signsOf(seen: Seen): SignId[] {
  return senses.flatMap(({ sense, choices }) => {
    const sign = choices.find(({ tap }) => tap === seen[sense])?.sign
    return sign == null ? [] : [sign]
  })
}

export const isAllSeen = (seen: Seen): boolean => senses.every(({ sense }) => seen[sense] !== null)

/** "fine · sour · film", with a dash where nobody looked; empty before the first look. */
export function saySeen(seen: Seen): string {
  if (senses.every(({ sense }) => seen[sense] === null)) return ''
  return senses.map(({ sense }) => seen[sense] ?? '–').join(' · ')
}

/** What must stop because of what was seen and smelt, most dangerous first. */
export const stopsOf = (seen: Seen): string[] => stopsFor(signsOf(seen)).map(sayStop)

/** What to mind beside the recipe (common practice; the fluid's sheet and the supplier decide). */
export function signNotes(seen: Seen): string[] {
  const signs = signsOf(seen)
  const notes: string[] = []
  if (signs.includes('rancid smell')) {
    notes.push('A rancid smell says germs: have a dip slide read, and ask the supplier before anything is added.')
  }
  if (signs.includes('oil layer')) {
    notes.push('Skim the oil first: it hides the level and lifts the refractometer reading.')
  }
  return notes
}
