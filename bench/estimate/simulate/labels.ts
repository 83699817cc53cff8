/** What is wrong with the records of a shop, known only here. */
export interface WrongReading {
  kind: 'misread' | 'wrong-sump'
  sump: string
  entry: string
  atMs: number
  /** °Brix beyond what the instrument showed of this sump. */
  error: number
}

export interface MissingRecord {
  kind: 'unlogged-addition' | 'unlogged-water' | 'unlogged-concentrate' | 'unlogged-drawoff' | 'leak-in'
  sump: string
  atMs: number
  /** Litres, and their share of what was in the sump. */
  volume: number
  share: number
}

export interface InstrumentOff {
  instrument: string
  atMs: number
  /** °Brix. */
  offset: number
  entries: string[]
}

export interface Labels {
  wrongReadings: WrongReading[]
  missing: MissingRecord[]
  instrumentsOff: InstrumentOff[]
}
