import type { EntryOf } from '../schema/entries/index.ts'

/** The sump that a transfer goes into; null where it goes into a container, or nobody said. */
export function receiverOf({ to }: EntryOf<'transfer'>): string | null {
  if (typeof to === 'string') return to
  return to !== undefined && 'sump' in to ? to.sump : null
}
