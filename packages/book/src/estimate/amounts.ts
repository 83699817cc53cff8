/**
 * A number that can be one: finite and not below 0. Entries were judged when they came in; those that only a newer version
 * knew then were not.
 */
export const amountOf = (value: unknown): number | null =>
  typeof value === 'number' && Number.isFinite(value) && value >= 0 ? value : null

export const percentOf = (value: unknown): number | null => {
  const amount = amountOf(value)
  return amount === null || amount > 100 ? null : amount
}

export const textOf = (value: unknown): string | null => (typeof value === 'string' && value !== '' ? value : null)
