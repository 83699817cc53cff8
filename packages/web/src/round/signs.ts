import { message, type SignId, say, sayStop, stopsFor } from '@sumpbook/fluid'

/** What is looked at, smelt and judged at every sump, in the order of the round. */
export type Sense = 'look' | 'smell' | 'oil'

/** One tap for each; null where nobody looked. */
export type Seen = Readonly<Record<Sense, string | null>>

export const notLooked: Seen = { look: null, smell: null, oil: null }

/** The taps, and the sign of the published list that each writes down; "fine" writes nothing. */
export const senses: readonly {
  sense: Sense
  legend: string
  /** `tap` is what the device remembers, `words` what is said of it. */
  choices: readonly { tap: string; words: string; sign: SignId | null }[]
}[] = [
  {
    sense: 'look',
    legend: message('Look'),
    choices: [
      { tap: 'fine', words: message('fine'), sign: null },
      { tap: 'foam', words: message('foam'), sign: 'foam' },
      { tap: 'split', words: message('split'), sign: 'emulsion split' },
      { tap: 'dirty', words: message('dirty'), sign: 'dirt' },
    ],
  },
  {
    sense: 'smell',
    legend: message('Smell'),
    choices: [
      { tap: 'fine', words: message('fine'), sign: null },
      { tap: 'sour', words: message('sour'), sign: 'sour smell' },
      { tap: 'rancid', words: message('rancid'), sign: 'rancid smell' },
      { tap: 'eggs', words: message('eggs'), sign: 'rotten-egg smell' },
    ],
  },
  {
    sense: 'oil',
    legend: message('Oil on top'),
    choices: [
      { tap: 'fine', words: message('fine'), sign: null },
      { tap: 'film', words: message('film'), sign: 'oil film' },
      { tap: 'layer', words: message('layer'), sign: 'oil layer' },
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
  return senses
    .map(({ sense, choices }) => {
      const words = choices.find(({ tap }) => tap === seen[sense])?.words
      return words === undefined ? '–' : say(words)
    })
    .join(' · ')
}

/** What must stop because of what was seen and smelt, most dangerous first. */
export const stopsOf = (seen: Seen): string[] => stopsFor(signsOf(seen)).map(sayStop)

/** What to mind beside the recipe (common practice; the fluid's sheet and the supplier decide). */
export function signNotes(seen: Seen): string[] {
  const signs = signsOf(seen)
  const notes: string[] = []
  if (signs.includes('rancid smell')) {
    notes.push(say('A rancid smell says germs: have a dip slide read, and ask the supplier before anything is added.'))
  }
  if (signs.includes('oil layer')) {
    notes.push(say('Skim the oil first: it hides the level and lifts the refractometer reading.'))
  }
  return notes
}
