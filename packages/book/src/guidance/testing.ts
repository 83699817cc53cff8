import { openBook } from '../book.ts'
import { importBookFile } from '../import/import-book.ts'
import { emptyStore, smallShop, testId, testNow } from '../testing.ts'

/** A book of the small shop under some guidance, as of Tuesday 3 March 2026, 10:00 UTC, or another time. */
export async function guidedBook(
  {
    guidance,
    entries = [],
    shop = {},
    ...more
  }: { guidance?: unknown; entries?: readonly unknown[]; shop?: Record<string, unknown> } & Record<string, unknown>,
  at = testNow,
) {
  const store = await emptyStore()
  const own = { ...smallShop().shop, ...shop, ...(guidance === undefined ? {} : { guidance }) }
  const file = { ...smallShop({ entries, ...more }), shop: own }
  await importBookFile(store, JSON.stringify(file), at)
  return openBook(store, () => at)
}

/** The nth entry of the small shop's sump. */
export const told = (n: number, at: string, more: Record<string, unknown>) => ({
  id: testId(n),
  at: at.includes('T') ? at : `${at}T08:00:00Z`,
  kind: 'reading',
  sump: 's1',
  ...more,
})

export const germany = { pack: 'germany', edition: '2007' }
export const unitedKingdom = { pack: 'united-kingdom', edition: 'current' }
