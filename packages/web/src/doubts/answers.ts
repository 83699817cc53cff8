import { message } from '@sumpbook/fluid'
import type { DoubtAnswer, Outlook } from '../api/types.ts'

export type StoryKind = DoubtAnswer['kind']

/** How a story is settled where it is the true one: the reading is set aside, what is missing is written, or a verdict says so. */
export type Settling =
  | { by: 'aside'; reason: string }
  | { by: 'entry'; what: MissingKind }
  | { by: 'verdict'; words: string }

/** What may be missing from the journal. */
export type MissingKind = 'mix' | 'water' | 'concentrate' | 'drawoff' | 'charge'

const settlings: Record<StoryKind, Settling> = {
  misread: { by: 'aside', reason: 'misread' },
  'wrong-sump': { by: 'aside', reason: 'figure of another sump' },
  instrument: { by: 'verdict', words: message('The instrument was off') },
  'wrong-fluid': { by: 'verdict', words: message('Another fluid is in it') },
  'unlogged-addition': { by: 'entry', what: 'mix' },
  'unlogged-water': { by: 'entry', what: 'water' },
  'unlogged-concentrate': { by: 'entry', what: 'concentrate' },
  'unlogged-drawoff': { by: 'entry', what: 'drawoff' },
  'unlogged-charge': { by: 'entry', what: 'charge' },
  'leak-in': { by: 'verdict', words: message('Water gets in') },
}

/** A story of a doubt, with how likely it is and how it is settled. */
export interface Story {
  kind: StoryKind
  probability: number
  /** Litres nobody wrote down, where the doubt says how many. */
  volume: number | null
  settling: Settling
}

/** The stories of a doubt, likeliest first. That nothing is wrong is not among them: it can always be said. */
export function storiesOf({ kind, probability, volume, entry, others }: DoubtAnswer): Story[] {
  const storyOf = (of: StoryKind, likely: number, litres: number | null): Story => {
    const settling = settlings[of]
    // A figure of several readings cannot be set aside as one.
    const isOne = settling.by !== 'aside' || entry !== null
    return {
      kind: of,
      probability: likely,
      volume: litres,
      settling: isOne ? settling : { by: 'verdict', words: message('So it was') },
    }
  }
  return [
    storyOf(kind, probability, volume),
    ...others.flatMap((other) => (other.kind === 'stands' ? [] : [storyOf(other.kind, other.probability, null)])),
  ]
}

/** What is to be written where something is missing, as far as the doubt says: to be looked over before it is. */
export interface MissingDraft {
  what: MissingKind
  litres: number | null
  /** Milliseconds since 1970. */
  at: number
}

const minute = 60_000

/**
 * Most of what is missing was poured at the visit before the reading that surprised: a minute after its last record. Where there is
 * none, an hour before the reading.
 */
export function draftOf(
  { volume, settling }: Story,
  doubt: Pick<DoubtAnswer, 'at' | 'entries'>,
  entries: Outlook['entries'],
): MissingDraft {
  const shown = Date.parse(doubt.at)
  const before = entries
    .filter(({ id, at }) => !doubt.entries.includes(id) && Date.parse(at) < shown)
    .reduce<number | null>((last, { at }) => Math.max(last ?? 0, Date.parse(at)), null)
  const at = before === null ? shown - 60 * minute : Math.min(before + minute, shown - minute)
  return {
    what: settling.by === 'entry' ? settling.what : 'mix',
    litres: volume === null ? null : Math.abs(volume),
    at,
  }
}
