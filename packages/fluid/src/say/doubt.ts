import type { DoubtKind, EstimatedDoubt } from '../estimate/answer-types.ts'
import { message, say } from '../words/index.ts'
import { type Reader, sayBetween, sayNumber, sayPercent, sayVolume } from './units.ts'

/** From this probability on a story is called likely; below it is more likely than any other. */
const likely = 0.8

/**
 * A doubt in plain words: what was found, what was expected, the likeliest story, and what to do first, which is always to read
 * again. "Read 9.8 °Brix where 5.0 to 5.6 was expected: likely misread. Read it again first."
 */
export function sayDoubt(
  doubt: Pick<EstimatedDoubt, 'kind' | 'probability' | 'volume' | 'found' | 'open'>,
  reader: Reader,
): string {
  const values = { found: foundWords(doubt, reader), story: sayStory(doubt, reader), next: say(nextWords(doubt)) }
  return doubt.probability >= likely
    ? say('{found}: likely {story}. {next}', values)
    : say('{found}: more likely than not {story}. {next}', values)
}

function foundWords({ kind, found }: Pick<EstimatedDoubt, 'kind' | 'found'>, reader: Reader): string {
  const { quantity, read, expected, low90, high90 } = found
  const figure = (value: number) => {
    if (quantity === 'seen') return sayVolume(Math.max(0, value), reader)
    return quantity === 'titration' ? sayPercent(value, reader) : `${sayNumber(value, 1, reader)} °Brix`
  }
  if (kind === 'instrument') {
    const by = figure(Math.abs(read - expected))
    return read >= expected
      ? say('All readings of a round lie above what was expected, by about {by}', { by })
      : say('All readings of a round lie below what was expected, by about {by}', { by })
  }
  const [low, high] = [figure(Math.max(0, low90)), figure(Math.max(0, high90))]
  const values = { read: figure(read), expected: low === high ? high : sayBetween(low, high) }
  if (quantity === 'seen') return say('Saw {read} where {expected} was expected', values)
  return quantity === 'titration'
    ? say('Titrated {read} where {expected} was expected', values)
    : say('Read {read} where {expected} was expected', values)
}

/** A story by itself: "about 40 L of mix that nobody wrote down". */
export function sayStory({ kind, volume }: Pick<EstimatedDoubt, 'kind' | 'volume'>, reader: Reader): string {
  const measured = measuredStories[kind]
  return volume === null || measured === undefined
    ? say(stories[kind])
    : say(measured, { volume: sayVolume(Math.abs(volume), reader) })
}

const stories: Record<DoubtKind, string> = {
  misread: message('misread or mistyped'),
  instrument: message('the instrument is off'),
  'wrong-sump': message('the figure of another sump'),
  'wrong-fluid': message('another fluid in it than was written down'),
  'unlogged-addition': message('mix that nobody wrote down'),
  'unlogged-water': message('water that nobody wrote down'),
  'unlogged-concentrate': message('concentrate that nobody wrote down'),
  'unlogged-drawoff': message('fluid taken out that nobody wrote down'),
  'unlogged-charge': message('a fresh charge that nobody wrote down'),
  'leak-in': message('water getting in from outside'),
}

/** The same where it is known how much. */
const measuredStories: Partial<Record<DoubtKind, string>> = {
  'unlogged-addition': message('about {volume} of mix that nobody wrote down'),
  'unlogged-water': message('about {volume} of water that nobody wrote down'),
  'unlogged-concentrate': message('about {volume} of concentrate that nobody wrote down'),
  'unlogged-drawoff': message('about {volume} of fluid taken out that nobody wrote down'),
  'leak-in': message('about {volume} of water getting in from outside'),
}

function nextWords({ kind, open }: Pick<EstimatedDoubt, 'kind' | 'open'>): string {
  if (kind === 'instrument') {
    return open
      ? message('Check its zero with water, then read again first.')
      : message(
          'Check its zero with water, then read again first where it still matters; it no longer moves the figures.',
        )
  }
  if (!open) return message('Read it again first where it still matters; it no longer moves the figures.')
  if (kind === 'leak-in') return message('Read it again first; if it stands, look for the leak.')
  return kind.startsWith('unlogged-') || kind === 'wrong-fluid'
    ? message('Read it again first; if it stands, write the missing entry.')
    : message('Read it again first.')
}
