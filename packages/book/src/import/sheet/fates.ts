/** What becomes of an entry of the sheet. */
export type Fate = 'same' | 'new' | 'corrected'

const codes: readonly Fate[] = ['same', 'new', 'corrected']

/** Fates and ordinals of the entries of a sheet in its order, a byte each: there may be hundreds of thousands. */
export class Fates {
  #bytes = new Uint8Array(4096)
  #length = 0
  /** Ordinals other than 0, by place. */
  readonly #ordinals = new Map<number, number>()

  get length(): number {
    return this.#length
  }

  push(fate: Fate, ordinal: number): void {
    if (this.#length === this.#bytes.length) {
      const longer = new Uint8Array(2 * this.#length)
      longer.set(this.#bytes)
      this.#bytes = longer
    }
    if (ordinal !== 0) this.#ordinals.set(this.#length, ordinal)
    this.#bytes[this.#length] = codes.indexOf(fate)
    this.#length += 1
  }

  /** @throws {RangeError} a place beyond the end */
  at(place: number): Fate {
    const code = place < this.#length ? this.#bytes[place] : undefined
    if (code === undefined) throw new RangeError(`place is ${place}, expected below ${this.#length}`)
    return codes[code]!
  }

  ordinalAt(place: number): number {
    return this.#ordinals.get(place) ?? 0
  }
}
