import { say } from '../words/index.ts'

/** A probability as people say one, to the tenth: "7 in 10"; near its ends "1 in 20 or less", "19 in 20 or more". */
export function sayChance(probability: number): string {
  if (probability < 0.075) return say('1 in 20 or less')
  if (probability >= 0.925) return say('19 in 20 or more')
  const tenths = Math.min(9, Math.max(1, Math.round(10 * probability)))
  return say('{tenths} in 10', { tenths })
}
