/** One thing wrong with a stored book. */
export interface StoreFault {
  /** The entry's place; null where the fault is none of an entry. */
  seq: number | null
  /** The entry's id, or the thing's kind and id. */
  id: string | null
  /** What is wrong, in a sentence without its beginning. */
  fault: string
}

/** Faults in the order in which they were found; beyond some they are only counted. */
export interface FaultList {
  readonly faults: StoreFault[]
  readonly count: number
  add(fault: StoreFault): void
}

const listedAtMost = 1000

export function faultList(): FaultList {
  const faults: StoreFault[] = []
  let count = 0
  return {
    faults,
    get count() {
      return count
    },
    add: (fault) => {
      count += 1
      if (faults.length < listedAtMost) faults.push(fault)
    },
  }
}

/** "place 17, entry 0190…: its body is not JSON" */
export function sayStoreFault({ seq, id, fault }: StoreFault): string {
  const place = [seq === null ? null : `place ${seq}`, id === null ? null : seq === null ? id : `entry ${id}`]
  const where = place.filter((part) => part !== null).join(', ')
  return where === '' ? fault : `${where}: ${fault}`
}
