/** A void: the entry `id` withdraws the entry `target`. */
export interface Void {
  id: string
  target: string
}

/**
 * The entries that voids withdraw, voids of voids included: an entry is withdrawn where at least one void that
 * stands names it. Voids that withdraw each other in a circle all fall, and with them nothing else. The answer
 * depends on the set alone, never on the order in which the voids arrived.
 */
export function withdrawnBy(voids: readonly Void[]): Set<string> {
  const targetOf = new Map(voids.map(({ id, target }) => [id, target]))
  const undecided = new Map<string, number>()
  for (const id of targetOf.keys()) undecided.set(id, 0)
  for (const target of targetOf.values()) {
    if (undecided.has(target)) undecided.set(target, undecided.get(target)! + 1)
  }
  const withdrawn = new Set<string>()
  const decided = [...undecided].filter(([, count]) => count === 0).map(([id]) => id)
  for (let next = decided.pop(); next !== undefined; next = decided.pop()) {
    if (!undecided.delete(next)) continue
    const target = targetOf.get(next)!
    const left = (undecided.get(target) ?? 0) - 1
    if (undecided.has(target)) undecided.set(target, left)
    if (!withdrawn.has(next)) withdrawn.add(target)
    if (left === 0 || withdrawn.has(target)) decided.push(target)
  }
  for (const id of undecided.keys()) withdrawn.add(id)
  return withdrawn
}
