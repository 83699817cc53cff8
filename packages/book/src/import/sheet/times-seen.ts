/**
 * Counts how often each time came, for hundreds of thousands of times in a few bytes each: a hash table with open
 * addressing in typed arrays. Times are milliseconds since 1970 and exact.
 */
export class TimesSeen {
  #times = new Float64Array(16).fill(Number.NaN)
  #counts = new Uint32Array(16)
  #held = 0

  /** @returns how often the time came before */
  add(time: number): number {
    if (2 * this.#held >= this.#times.length) this.#grow()
    const place = this.#placeOf(time)
    const before = this.#counts[place]!
    if (before === 0) this.#held += 1
    this.#times[place] = time
    this.#counts[place] = before + 1
    return before
  }

  #placeOf(time: number): number {
    const last = this.#times.length - 1
    let place = mixed(time) & last
    while (this.#counts[place] !== 0 && this.#times[place] !== time) place = (place + 1) & last
    return place
  }

  #grow(): void {
    const [times, counts] = [this.#times, this.#counts]
    this.#times = new Float64Array(2 * times.length).fill(Number.NaN)
    this.#counts = new Uint32Array(2 * times.length)
    for (let i = 0; i < times.length; i += 1) {
      if (counts[i] === 0) continue
      const place = this.#placeOf(times[i]!)
      this.#times[place] = times[i]!
      this.#counts[place] = counts[i]!
    }
  }
}

/** Spreads times that differ by whole minutes or days over all places (Knuth's multiplicative hashing). */
function mixed(time: number): number {
  const seconds = Math.floor(time / 1000) | 0
  const product = Math.imul(seconds ^ (time % 1000), 0x9e3779b1)
  return product ^ (product >>> 15)
}
