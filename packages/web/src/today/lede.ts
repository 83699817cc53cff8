import { say } from '@sumpbook/fluid'

/** Stands where the note does, in no text that anybody types. */
const mark = '\u0000'

/** Where the last shift's note begins in the lede, by the words that go before it in the language that is spoken; −1 without one. */
function noteAt(lede: string): number {
  const [before] = say('Last shift’s note: “{note}”', { note: mark }).split(mark)
  return lede.indexOf(before!)
}

/** The last shift's note, as the lede ends with it; null without one. */
export function handoverOf(lede: string): string | null {
  const at = noteAt(lede)
  return at < 0 ? null : lede.slice(at)
}

/** The day's sentences alone. */
export function withoutHandover(lede: string): string {
  const at = noteAt(lede)
  return (at < 0 ? lede : lede.slice(0, at)).trim()
}
