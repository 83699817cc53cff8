/** Rows of texts that grow as they are filled: there is always one empty row at the end. */
export type Row<Key extends string> = Readonly<Record<Key, string>>

export const emptyRow = <Key extends string>(keys: readonly Key[]): Row<Key> =>
  Object.fromEntries(keys.map((key) => [key, ''])) as Row<Key>

export const isEmptyRow = (row: Row<string>): boolean => Object.values(row).every((text) => text.trim() === '')

/** Without empty rows at the end but one; at least `least` rows. */
export function grown<Key extends string>(
  rows: readonly Row<Key>[],
  keys: readonly Key[],
  least = 1,
): readonly Row<Key>[] {
  const last = rows.findLastIndex((row) => !isEmptyRow(row))
  const kept = rows.slice(0, last + 1)
  const missing = Math.max(1, least - kept.length)
  return [...kept, ...Array.from({ length: missing }, () => emptyRow(keys))]
}

/** One text of one row changed, and the rows grown. */
export function withText<Key extends string>(
  rows: readonly Row<Key>[],
  { index, key, text, least = 1 }: { index: number; key: Key; text: string; least?: number },
): readonly Row<Key>[] {
  const keys = Object.keys(rows[0]!) as Key[]
  return grown(
    rows.map((row, i) => (i === index ? { ...row, [key]: text } : row)),
    keys,
    least,
  )
}
