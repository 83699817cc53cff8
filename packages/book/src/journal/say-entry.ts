import { type Reader, sayList, sayNumber, sayStrength, sayVolume } from '@sumpbook/fluid'
import type { Entry, EntryOf, Reading } from '../schema/entries/index.ts'
import type { Things } from '../setup/things.ts'
import { sayReading, sayValue } from '../today/say-reading.ts'

/** An entry as a line of the journal. Names of things are those of `things`; units those of the reader. */
export function sayEntry(entry: Entry, things: Things, reader: Reader): string {
  const note = entry.note === undefined ? '' : ` “${entry.note}”`
  return `${wordsOf(entry, things, reader)}${note}`
}

function wordsOf(entry: Entry, things: Things, reader: Reader): string {
  switch (entry.kind) {
    case 'reading':
      return readingWords(entry, reader)
    case 'charge':
      return `Fresh charge${amount(entry.volume, entry.strength, reader)}${made(entry, things)}`
    case 'addition':
      return additionWords(entry, things, reader)
    case 'drawoff':
      return `Drew off${amount(entry.volume, undefined, reader)}`
    case 'transfer':
      return `Moved${amount(entry.volume, undefined, reader)} to ${receiverName(entry, things)}`
    case 'skim':
      return `Skimmed${amount(entry.litres, undefined, reader)} of tramp oil`
    case 'observation':
      return (entry.signs ?? []).length === 0
        ? 'Looked and smelt: nothing found'
        : `Seen: ${sayList(entry.signs ?? [])}`
    case 'job':
      return `Job: ${[entry.material, entry.process].filter((part) => part !== undefined).join(', ')}`
    case 'idle':
      return `Stood idle from ${entry.from ?? '…'} to ${entry.to ?? '…'}`
    case 'cleanout':
      return `Cleaned out${entry.cleaner === undefined ? '' : ` with ${entry.cleaner}`}${entry.wasteVolume === undefined ? '' : `, ${sayVolume(entry.wasteVolume, reader)} of waste`}`
    case 'upkeep':
      return `Upkeep: ${[entry.task, entry.result].filter((part) => part !== undefined).join(', ')}`
    case 'skip':
      return `Passed by${entry.reason === undefined ? '' : `: ${entry.reason}`}`
    case 'handover':
      return `Note: ${entry.text ?? ''}`
    case 'setup':
      return `Set up: ${Object.keys(entry.changes).join(', ')}`
    case 'void':
      return `Withdrew an entry${entry.reason === undefined ? '' : `: ${entry.reason}`}`
    case 'order':
      return `Ordered${amount(entry.litres, undefined, reader)}${made(entry, things)}`
    case 'receipt':
      return `Received${amount(entry.litres, undefined, reader)}${made(entry, things)}`
    case 'issue':
      return `Issued${amount(entry.litres, undefined, reader)}${made(entry, things)}`
    case 'stored':
      return `Put into waste${amount(entry.litres, undefined, reader)}${entry.stream === undefined ? '' : ` of ${entry.stream}`}`
    case 'pickup':
      return `Waste picked up${amount(entry.litres, undefined, reader)}${entry.document === undefined ? '' : `, document ${entry.document}`}`
    case 'analysis':
      return `Water analysis${entry.hardness === undefined ? '' : `: hardness ${sayNumber(entry.hardness, 0, reader)} ppm`}`
    case 'check':
      return checkWords(entry, reader)
    case 'verdict':
      return `Settled${entry.answer === undefined ? '' : `: ${entry.answer}`}`
    case 'snooze':
      return `Put off${entry.until === undefined ? '' : ` until ${entry.until}`}`
    case 'signoff':
      return signoffWords(entry)
  }
}

function checkWords({ about, found, document }: EntryOf<'check'>, reader: Reader): string {
  if (document !== undefined) return `Document ${document} came for a pickup`
  const isCount = found !== undefined && (about.kind === 'stock' || about.kind === 'waste')
  return isCount ? `Counted${amount(found, undefined, reader)}` : 'Check'
}

function signoffWords({ step, claim, sheet }: EntryOf<'signoff'>): string {
  if (claim !== undefined) return step === 'released' ? 'Let go of it again' : 'Took it on'
  if (step === 'opened') return `Opened a job sheet${sheet === undefined ? '' : `: ${sheet}`}`
  if (step === 'given-up') return 'Gave the job up'
  return `Signed off${step === undefined ? '' : `: ${step}`}`
}

function amount(litres: number | undefined, strength: number | undefined, reader: Reader): string {
  const volume = litres === undefined ? '' : ` ${sayVolume(litres, reader)}`
  return `${volume}${strength === undefined ? '' : ` at ${sayStrength(strength, reader)}`}`
}

function made({ water, fluid }: { water?: unknown; fluid?: unknown }, things: Things): string {
  const names = [things.water.get(String(water))?.name, things.fluid.get(String(fluid))?.name].filter(
    (name) => name !== undefined,
  )
  return names.length === 0 ? '' : `, ${names.join(', ')}`
}

function additionWords(entry: EntryOf<'addition'>, things: Things, reader: Reader): string {
  const { volume, concentrate, toMark, strength, meter, additive } = entry
  if (volume === 0) return 'Nothing added'
  if (volume !== undefined) return `Added${amount(volume, strength, reader)}${made(entry, things)}`
  if (concentrate !== undefined) return `Added ${sayVolume(concentrate, reader)} of concentrate`
  if (toMark === true) return `Filled to the mark${amount(undefined, strength, reader)}${made(entry, things)}`
  if (meter !== undefined)
    return `Added by meter, count ${sayNumber(meter.count, 0, reader)}${amount(undefined, strength, reader)}`
  if (additive !== undefined)
    return `Added${amount(additive.litres, undefined, reader)} of ${additive.name ?? 'an additive'}`
  return `Added an unmeasured amount${amount(undefined, strength, reader)}`
}

function receiverName({ to }: EntryOf<'transfer'>, things: Things): string {
  const id = typeof to === 'string' ? to : to !== undefined && 'sump' in to ? to.sump : to?.container
  return things.sump.get(id ?? '')?.name ?? things.container.get(id ?? '')?.name ?? 'somewhere else'
}

/** Everything measured, strength first, each with its unit. */
function readingWords(entry: Reading, reader: Reader): string {
  if (entry.pending === true) return 'Took a sample, result to come'
  const parts = [sayReading(entry, 'strength', reader), levelWords(entry, reader), ...figures(entry, reader)]
  for (const { name, value, unit = '' } of entry.analytes ?? []) {
    if (value !== undefined) parts.push(`${name} ${sayValue(value, 2, reader)} ${unit}`.trim())
  }
  const said = parts.filter((part) => part !== '')
  return said.length === 0 ? 'Read nothing' : said.join(', ')
}

function levelWords(entry: Reading, reader: Reader): string {
  const seen = sayReading(entry, 'level', reader)
  if (seen === '') return ''
  return `level ${seen}${entry.pumps === 'running' ? ' with the pumps running' : ''}`
}

const figureWords = [
  ['ph', 'pH', '', 1],
  ['hardness', 'hardness', 'ppm', 0],
  ['chloride', 'chloride', 'mg/L', 0],
  ['conductivity', 'conductivity', 'mS/cm', 2],
  ['sulfate', 'sulfate', 'mg/L', 0],
  ['nitrate', 'nitrate', 'mg/L', 0],
  ['nitrite', 'nitrite', 'mg/L', 0],
  ['temperature', '', '°C', 0],
  ['bacteria', 'bacteria', 'CFU/mL', 0],
  ['fungi', 'fungi', 'CFU/mL', 0],
  ['trampOil', 'tramp oil', '%', 1],
  ['dissolvedOxygen', 'oxygen', 'mg/L', 1],
  ['machineHours', 'machine hours', 'h', 0],
] as const

function figures(entry: Reading, reader: Reader): string[] {
  return figureWords.flatMap(([field, words, unit, decimals]) => {
    const value = entry[field]
    return value === undefined ? [] : [`${words} ${sayValue(value, decimals, reader)} ${unit}`.trim()]
  })
}
