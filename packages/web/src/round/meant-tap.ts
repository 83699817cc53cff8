/**
 * Whether a tap was meant for what it lands on. A glove that bounces, or a thumb that taps twice for safety, taps a second time at once; where
 * the first tap brought something else under it (the keys in place of the looks, the next sump in place of this one), nobody meant that.
 * What is tapped twice while the same is shown counts twice: "44" on the keys.
 *
 * @param shown what is under the thumb, in a word that is another once something else is
 * @param count of taps in a row at one place so far, as the browser counts them in `detail`; 0 from a keyboard
 * @example const isMeant = meantTaps(); isMeant('looks', 1) // true; isMeant('keys', 2) // false
 */
export function meantTaps(): (shown: string, count: number) => boolean {
  let first: string | null = null
  return (shown, count) => {
    if (count <= 1) first = shown
    return shown === first
  }
}
