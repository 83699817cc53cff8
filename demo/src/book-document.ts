/** The book file as the example writes it, plain JSON; its format is that of the published JSON Schema. */
export interface BookDocument {
  format: 'sumpbook-book/1'
  shop: {
    name: string
    timeZone: string
    units: 'metric'
    currency: string
    costs: {
      labourPerHour: number
      machinePerHour: number
      minutesPerStop: number
      cleanerPerLitre: number
      wastePerLitre: number
      wasteStreams: { stream: string; perLitre: number }[]
      wastePerPickup: number
      additives: { name: string; perLitre: number }[]
    }
    guidance: {
      pack: string
      edition: string
      own: { bacteria: { everyDays: number; readFromHours: number; readToHours: number } }
    }
    additives: AdditiveDocument[]
    upkeep: UpkeepTaskDocument[]
    workDays: number[]
    shutdowns: { from: string; to: string }[]
  }
  fluids: FluidDocument[]
  waters: WaterDocument[]
  sumps: SumpDocument[]
  containers: { id: string; name: string; capacity: number; graduation: number }[]
  mixers: { id: string; name: string; settings: [number, number][] }[]
  instruments: InstrumentDocument[]
  meters: { id: string; name: string; litresPerCount: number; sump?: string; place?: string }[]
  wasteContainers: WasteContainerDocument[]
  entries: EntryDocument[]
}

export interface AdditiveDocument {
  id: string
  name: string
  kind: 'defoamer' | 'biocide'
  dose: { low: number; high: number; unit: 'mL/L' }
  minimumDays: number
  most: { amount: number; days: number }
  label: string
  who?: 'keeper'
}

export interface UpkeepTaskDocument {
  id: string
  task: string
  sump?: string
  about?: { kind: 'instrument' | 'mixer' | 'water'; id: string }
  everyDays: number
  counts?: 'check' | 'analysis'
}

export interface WasteContainerDocument {
  id: string
  name: string
  stream: string
  kind: 'emulsion' | 'oil' | 'sludge'
  code: string
  capacity: number
  density: number
  term: { count: number; unit: 'days' | 'months' | 'years'; source: string; from: 'first' }
  place: string
}

export interface FluidDocument {
  id: string
  name: string
  class: 'soluble-oil' | 'semi-synthetic' | 'synthetic' | 'straight-oil'
  brixFactor?: number
  brixChart?: [number, number][]
  minTopUp?: number
  maxMixStrength?: number
  neatAllowed?: boolean
  unsuitedMetals?: string[]
  limits?: {
    concentration?: { low: number; target: number; high: number }
    ph?: { low: number; high: number }
    hardness?: { low: number; high: number }
    bacteria?: { high: number }
    trampOil?: { high: number }
  }
  pricePerLitre: number
  shelfLifeDays: number
  density: number
  stock?: {
    packSize: number
    leadDays: number
    leadSd: number
    orderCost: number
    holdingPercent: number
    service: number
  }
}

export interface WaterDocument {
  id: string
  name: string
  kind: 'tap' | 'deionised'
  hardness: number
  chloride: number
  sulfate: number
  nitrate: number
  conductivity: number
  ph: number
  costPerLitre: number
}

export interface SumpDocument {
  id: string
  name: string
  kind: 'stand-alone' | 'central'
  machines: string[]
  fluid: string
  capacity: number
  fillVolume: number
  minVolume: number
  holdUp: number
  dipTable?: [number, number][]
  surfaceArea: number
  place: string
  order: number
  turnoverHours?: number
  metals: string[]
}

export interface InstrumentDocument {
  id: string
  name: string
  kind: string
  resolution?: number
  range?: [number, number]
  compensated?: boolean
  pads?: number[]
}

/** One entry: what every entry says, and the fields of its kind. */
export interface EntryDocument {
  id: string
  kind: string
  at: string
  by: string
  device: string
  recordedAt: string
  sump?: string
  about?: { kind: string; id?: string }
  typed?: Record<string, string>
  note?: string
  [field: string]: unknown
}
