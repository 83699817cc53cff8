/** A probability as people say one, to the tenth: "7 in 10"; near its ends "1 in 20 or less", "19 in 20 or more". */
export function sayChance(probability: number): string {
  if (probability < 0.075) return '1 in 20 or less'
  if (probability >= 0.925) return '19 in 20 or more'
  return `${Math.min(9, Math.max(1, Math.round(10 * probability)))} in 10`
}
