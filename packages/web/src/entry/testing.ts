import type { OutboxKeep } from './outbox-keep.ts'
import type { Waiting } from './waiting.ts'

/** A device's disk in memory: each call all of it or nothing, copies in and out. For tests. */
export interface MemoryDisk extends OutboxKeep {
  kept: Map<string, Waiting>
  /** What the next calls fail with; null where they go well. */
  failure: Error | null
}

export function memoryDisk(): MemoryDisk {
  const kept = new Map<string, Waiting>()
  const work = () => {
    if (disk.failure !== null) throw disk.failure
  }
  const disk: MemoryDisk = {
    kept,
    failure: null,
    async list() {
      work()
      return [...kept.values()].map((one) => structuredClone(one))
    },
    async add(items) {
      work()
      for (const one of items) if (!kept.has(one.entry.id)) kept.set(one.entry.id, structuredClone(one))
    },
    async change(id, make) {
      work()
      const now = kept.get(id)
      if (now === undefined) return
      const next = make(structuredClone(now))
      if (next === null) kept.delete(id)
      else kept.set(id, next)
    },
  }
  return disk
}
