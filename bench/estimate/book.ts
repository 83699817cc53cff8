/** What the bench writes and reads of a book file (`sumpbook-book/1`): plain fields, canonical units. */
export type Value = number | { low: number; high: number } | { below: number } | { atLeast: number }

export interface BenchEntry {
  id: string
  at: string
  kind: string
  sump?: string
  about?: { kind: string; id?: string }
  volume?: number
  strength?: number
  water?: string
  fluid?: string
  heldBack?: number
  toMark?: boolean
  concentrate?: number
  meter?: { id: string; count: number }
  brix?: number
  titration?: number
  hardness?: Value
  ph?: number
  level?: number
  pumps?: 'running' | 'stopped'
  instrument?: string
  litres?: number
  to?: string | { sump: string }
  from?: string
  until?: string
  material?: string
  [other: string]: unknown
}

export interface BenchFluid {
  id: string
  name: string
  brixFactor: number
  maxMixStrength: number
  limits: { concentration: { low: number; target: number; high: number } }
}

export interface BenchSump {
  id: string
  name: string
  kind: 'stand-alone' | 'central'
  fluid: string
  capacity?: number
  fillVolume?: number
  minVolume?: number
  holdUp?: number
  dipTable?: [number, number][]
}

export interface BenchWater {
  id: string
  name: string
  kind: 'tap' | 'deionised'
  hardness: number
}

export interface BenchBook {
  format: 'sumpbook-book/1'
  shop: {
    name: string
    timeZone: string
    units: 'metric'
    currency: string
    workDays: number[]
    shutdowns: { from: string; to: string }[]
  }
  fluids: BenchFluid[]
  waters: BenchWater[]
  sumps: BenchSump[]
  instruments: { id: string; name: string; kind: string; resolution?: number; pads?: number[] }[]
  meters: { id: string; name: string; litresPerCount: number; sump: string }[]
  entries: BenchEntry[]
}
