/**
 * A short name of a sentence, of up to six letters and digits, by which a phone's catalogue is kept: FNV-1a of 30 bits over its UTF-16 units. Two sentences may
 * share one; whoever makes a catalogue of short names sees to it that none of its own do.
 */
export function shortName(message: string): string {
  let hash = 0x811c9dc5
  for (let i = 0; i < message.length; i++) hash = Math.imul(hash ^ message.charCodeAt(i), 0x01000193)
  // The upper bits are the better mixed ones.
  return ((hash >>> 2) ^ (hash & 3)).toString(36)
}
