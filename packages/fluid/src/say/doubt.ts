import type { DoubtKind, EstimatedDoubt } from '../estimate/answer-types.ts'
import { type Reader, sayNumber, sayPercent, sayVolume } from './units.ts'

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
  const how = doubt.probability >= likely ? 'likely' : 'more likely than not'
  return `${foundWords(doubt, reader)}: ${how} ${sayStory(doubt, reader)}. ${nextWords(doubt)}`
}

function foundWords({ kind, found }: Pick<EstimatedDoubt, 'kind' | 'found'>, reader: Reader): string {
  const { quantity, read, expected, low90, high90 } = found
  const say = (value: number) => {
    if (quantity === 'seen') return sayVolume(Math.max(0, value), reader)
    return quantity === 'titration' ? sayPercent(value, reader) : `${sayNumber(value, 1, reader)} °Brix`
  }
  if (kind === 'instrument') {
    const side = read >= expected ? 'above' : 'below'
    return `All readings of a round lie ${side} what was expected, by about ${say(Math.abs(read - expected))}`
  }
  const verb = quantity === 'seen' ? 'Saw' : quantity === 'titration' ? 'Titrated' : 'Read'
  return `${verb} ${say(read)} where ${rangeWords(low90, high90, say)} was expected`
}

/** "5.0 to 5.6 °Brix", one figure where both ends are written the same. */
function rangeWords(low: number, high: number, say: (value: number) => string): string {
  const [from, to] = [say(Math.max(0, low)), say(Math.max(0, high))]
  if (from === to) return to
  const [, unit = ''] = / (.+)$/.exec(to) ?? []
  return from.endsWith(` ${unit}`) ? `${from.slice(0, -unit.length - 1)} to ${to}` : `${from} to ${to}`
}

/** A story by itself: "about 40 L of mix that nobody wrote down". */
export function sayStory({ kind, volume }: Pick<EstimatedDoubt, 'kind' | 'volume'>, reader: Reader): string {
  const litres = volume === null ? '' : `about ${sayVolume(Math.abs(volume), reader)} of `
  const stories: Record<DoubtKind, string> = {
    misread: 'misread or mistyped',
    instrument: 'the instrument is off',
    'wrong-sump': 'the figure of another sump',
    'wrong-fluid': 'another fluid in it than was written down',
    'unlogged-addition': `${litres}mix that nobody wrote down`,
    'unlogged-water': `${litres}water that nobody wrote down`,
    'unlogged-concentrate': `${litres}concentrate that nobody wrote down`,
    'unlogged-drawoff': `${litres}fluid taken out that nobody wrote down`,
    'unlogged-charge': 'a fresh charge that nobody wrote down',
    'leak-in': `${litres}water getting in from outside`,
  }
  return stories[kind]
}

function nextWords({ kind, open }: Pick<EstimatedDoubt, 'kind' | 'open'>): string {
  const first = kind === 'instrument' ? 'Check its zero with water, then read again first' : 'Read it again first'
  if (!open) return `${first} where it still matters; it no longer moves the figures.`
  if (kind === 'leak-in') return `${first}; if it stands, look for the leak.`
  return kind.startsWith('unlogged-') || kind === 'wrong-fluid'
    ? `${first}; if it stands, write the missing entry.`
    : `${first}.`
}
