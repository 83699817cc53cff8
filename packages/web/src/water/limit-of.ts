import type { Book, SumpNow, Thing } from '../api/types.ts'

/** The sump's own limit, else its fluid's. */
export function limitOf(
  book: Pick<Book, 'fluids' | 'sumpList'>,
  sump: Pick<SumpNow, 'sump' | 'fluid'> | undefined,
  mineral: 'hardness' | 'chloride' | 'conductivity',
  end: 'low' | 'high' = 'high',
): number | null {
  if (sump === undefined) return null
  const of = (thing: Thing | undefined) =>
    (thing?.limits as Record<string, { low?: number; high?: number } | undefined> | undefined)?.[mineral]?.[end]
  return (
    of(book.sumpList?.find(({ id }) => id === sump.sump)) ??
    of(book.fluids.find(({ id }) => id === sump.fluid.id)) ??
    null
  )
}
