import type { Fault, FieldRead } from './read.ts'

/** What a form's fields hold, by name. */
export type FieldTexts<Key extends string> = Readonly<Record<Key, string>>
/** How each of them is read. */
export type FieldReaders<Key extends string> = Readonly<Record<Key, (text: string) => FieldRead>>
export type FieldFaults<Key extends string> = Partial<Record<Key, Fault>>

export interface TextsRead<Key extends string> {
  /** Canonical; null where a field is empty or does not parse. */
  values: Record<Key, number | null>
  faults: FieldFaults<Key>
}

/**
 * Every field of a form at once. A field whose text is still the one that stands for a figure of the book has that figure to
 * the last digit: rounding for the eye changes nothing.
 *
 * @param known figures of the book and the texts that stand for them
 */
export function readTexts<Key extends string>(
  texts: FieldTexts<Key>,
  readers: FieldReaders<Key>,
  known: Partial<Record<Key, { text: string; value: number | null }>> = {},
): TextsRead<Key> {
  const values = {} as Record<Key, number | null>
  const faults: FieldFaults<Key> = {}
  for (const key of Object.keys(readers) as Key[]) {
    const text = texts[key]
    const before = known[key]
    const read: FieldRead = before !== undefined && before.text === text ? { value: before.value } : readers[key](text)
    values[key] = 'fault' in read ? null : read.value
    if ('fault' in read) faults[key] = read.fault
  }
  return { values, faults }
}
