import type { FileEvent } from './recorded-writes.ts'

/** What is on the disk after a power cut. */
export interface Image {
  /** By the file's name. */
  files: Map<string, Buffer>
  /** The last entry that was acknowledged before the cut. */
  acknowledged: number
}

type Chance = () => number

/** A disk writes this many bytes whole or not at all. */
const sector = 512

/**
 * The disk after a power cut just behind the event `cut`: of each file everything up to its last fsync, and of what was written since,
 * each sector by chance there or not, in whatever order.
 */
export function imageAfter(events: readonly FileEvent[], cut: number, chance: Chance): Image {
  const durable = new Map<string, Buffer>()
  const pending = new Map<string, FileEvent[]>()
  let acknowledged = 0
  for (const event of events.slice(0, cut + 1)) {
    if (event.what === 'ack') acknowledged = event.n
    else if (event.what === 'removal') {
      // Taken as done at once: only making the book removes a file here, and nothing is acknowledged before its next fsync.
      durable.delete(event.file)
      pending.delete(event.file)
    } else if (event.what === 'sync') {
      for (const one of pending.get(event.file) ?? []) apply(durable, one, () => true)
      pending.delete(event.file)
    } else pending.set(event.file, [...(pending.get(event.file) ?? []), event])
  }
  // Sometimes nothing since the fsync got there, sometimes nearly all.
  const share = [0, 0.1, 0.5, 0.9, 1][Math.floor(chance() * 5)]!
  for (const events of pending.values()) for (const event of events) apply(durable, event, () => chance() < share)
  return { files: durable, acknowledged }
}

function apply(files: Map<string, Buffer>, event: FileEvent, there: () => boolean): void {
  if (event.what === 'cut') {
    if (there()) files.set(event.file, resized(files.get(event.file), event.size))
    return
  }
  if (event.what !== 'write') return
  const { file, at, bytes } = event
  for (let from = 0; from < bytes.byteLength; ) {
    const length = Math.min(sector - ((at + from) % sector), bytes.byteLength - from)
    if (there()) {
      const whole = resized(files.get(file), Math.max(files.get(file)?.byteLength ?? 0, at + from + length))
      bytes.copy(whole, at + from, from, from + length)
      files.set(file, whole)
    }
    from += length
  }
}

/** What was never written reads as zeros. */
function resized(bytes: Buffer = Buffer.alloc(0), size: number): Buffer {
  if (bytes.byteLength === size) return bytes
  const whole = Buffer.alloc(size)
  bytes.copy(whole, 0, 0, Math.min(size, bytes.byteLength))
  return whole
}
