import {
  message,
  type Reader,
  say,
  sayDate,
  sayFinding,
  sayList,
  sayNumber,
  sayReason,
  sayStrength,
  sayTask,
  sayVolume,
  signCalled,
} from '@sumpbook/fluid'
import type { Entry, EntryOf, Reading } from '../schema/entries/index.ts'
import type { Things } from '../setup/things.ts'
import { sayReading, sayValue } from '../today/say-reading.ts'
import { setupWords } from './setup-words.ts'

/** An entry as a line of the journal. Names of things are those of `things`; units those of the reader. */
export function sayEntry(entry: Entry, things: Things, reader: Reader): string {
  const words = wordsOf(entry, things, reader)
  if (entry.note === undefined) return words
  // Why nothing was poured is tapped, and noted.
  const note = entry.kind === 'skip' ? sayReason(entry.note) : entry.note
  return say('{words} “{note}”', { words, note })
}

function wordsOf(entry: Entry, things: Things, reader: Reader): string {
  switch (entry.kind) {
    case 'reading':
      return readingWords(entry, reader)
    case 'charge': {
      const amount = amountOf(entry.volume, entry.strength, reader)
      return made(amount === '' ? say('Fresh charge') : say('Fresh charge {amount}', { amount }), entry, things)
    }
    case 'addition':
      return additionWords(entry, things, reader)
    case 'drawoff': {
      const amount = amountOf(entry.volume, undefined, reader)
      return amount === '' ? say('Drew off') : say('Drew off {amount}', { amount })
    }
    case 'transfer': {
      const [amount, receiver] = [amountOf(entry.volume, undefined, reader), receiverName(entry, things)]
      return amount === ''
        ? say('Moved to {receiver}', { receiver })
        : say('Moved {amount} to {receiver}', { amount, receiver })
    }
    case 'skim': {
      const amount = amountOf(entry.litres, undefined, reader)
      return amount === '' ? say('Skimmed of tramp oil') : say('Skimmed {amount} of tramp oil', { amount })
    }
    case 'observation':
      return (entry.signs ?? []).length === 0
        ? say('Looked and smelt: nothing found')
        : say('Seen: {signs}', { signs: sayList((entry.signs ?? []).map(signWords)) })
    case 'job':
      return say('Job: {job}', { job: [entry.material, entry.process].filter((part) => part !== undefined).join(', ') })
    case 'idle':
      return say('Stood idle from {from} to {to}', { from: entry.from ?? '…', to: entry.to ?? '…' })
    case 'cleanout':
      return cleanoutWords(entry, reader)
    case 'upkeep': {
      const done = [entry.task === undefined ? undefined : sayTask(entry.task), entry.result]
      return say('Upkeep: {done}', { done: done.filter((part) => part !== undefined).join(', ') })
    }
    case 'skip':
      return entry.reason === undefined
        ? say('Passed by')
        : say('Passed by: {reason}', { reason: sayReason(entry.reason) })
    case 'handover':
      return say('Note: {text}', { text: entry.text ?? '' })
    case 'setup':
      return setupWords(entry, things)
    case 'void':
      return entry.reason === undefined
        ? say('Withdrew an entry')
        : say('Withdrew an entry: {reason}', { reason: sayReason(entry.reason) })
    case 'order': {
      const amount = amountOf(entry.litres, undefined, reader)
      return made(amount === '' ? say('Ordered') : say('Ordered {amount}', { amount }), entry, things)
    }
    case 'receipt': {
      const amount = amountOf(entry.litres, undefined, reader)
      return made(amount === '' ? say('Received') : say('Received {amount}', { amount }), entry, things)
    }
    case 'issue': {
      const amount = amountOf(entry.litres, undefined, reader)
      return made(amount === '' ? say('Issued') : say('Issued {amount}', { amount }), entry, things)
    }
    case 'stored':
      return storedWords(entry, reader)
    case 'pickup': {
      const amount = amountOf(entry.litres, undefined, reader)
      const words = amount === '' ? say('Waste picked up') : say('Waste picked up {amount}', { amount })
      return entry.document === undefined
        ? words
        : say('{words}, document {document}', { words, document: entry.document })
    }
    case 'analysis':
      return entry.hardness === undefined
        ? say('Water analysis')
        : say('Water analysis: hardness {hardness} ppm', { hardness: sayNumber(entry.hardness, 0, reader) })
    case 'check':
      return checkWords(entry, reader)
    case 'verdict':
      return entry.answer === undefined ? say('Settled') : say('Settled: {answer}', { answer: entry.answer })
    case 'snooze':
      return entry.until === undefined ? say('Put off') : say('Put off until {until}', { until: sayDate(entry.until) })
    case 'signoff':
      return signoffWords(entry)
  }
}

function cleanoutWords({ cleaner, wasteVolume }: EntryOf<'cleanout'>, reader: Reader): string {
  const words = cleaner === undefined ? say('Cleaned out') : say('Cleaned out with {cleaner}', { cleaner })
  return wasteVolume === undefined
    ? words
    : say('{words}, {volume} of waste', { words, volume: sayVolume(wasteVolume, reader) })
}

function storedWords({ litres, stream }: EntryOf<'stored'>, reader: Reader): string {
  const amount = amountOf(litres, undefined, reader)
  if (stream === undefined) return amount === '' ? say('Put into waste') : say('Put into waste {amount}', { amount })
  return amount === ''
    ? say('Put into waste of {stream}', { stream })
    : say('Put into waste {amount} of {stream}', { amount, stream })
}

function checkWords({ about, found, document }: EntryOf<'check'>, reader: Reader): string {
  if (document !== undefined) return say('Document {document} came for a pickup', { document })
  const isCount = found !== undefined && (about.kind === 'stock' || about.kind === 'waste')
  return isCount ? say('Counted {amount}', { amount: sayVolume(found, reader) }) : say('Check')
}

const sheetWords = {
  cleanout: message('cleanout'),
  'change-over': message('change-over'),
  weekend: message('weekend'),
  holidays: message('holidays'),
  mothballed: message('mothballed'),
  restart: message('restart'),
}

function signoffWords({ step, claim, sheet }: EntryOf<'signoff'>): string {
  if (claim !== undefined) return step === 'released' ? say('Let go of it again') : say('Took it on')
  if (step === 'opened') {
    if (sheet === undefined) return say('Opened a job sheet')
    const known = Object.hasOwn(sheetWords, sheet) ? say(sheetWords[sheet as keyof typeof sheetWords]) : sheet
    return say('Opened a job sheet: {sheet}', { sheet: known })
  }
  if (step === 'given-up') return say('Gave the job up')
  return step === undefined ? say('Signed off') : say('Signed off: {step}', { step })
}

/** A word of the published list is said, another stands as it was typed. */
const signWords = (word: string): string => (signCalled(word) === word ? sayFinding(word) : word)

/** "38 L at 18 %", either of them alone, or nothing. */
function amountOf(litres: number | undefined, strength: number | undefined, reader: Reader): string {
  if (litres === undefined)
    return strength === undefined ? '' : say('at {strength}', { strength: sayStrength(strength, reader) })
  const volume = sayVolume(litres, reader)
  return strength === undefined
    ? volume
    : say('{volume} at {strength}', { volume, strength: sayStrength(strength, reader) })
}

/** With the names of what it was made of behind it. */
function made(words: string, { water, fluid }: { water?: unknown; fluid?: unknown }, things: Things): string {
  const names = [things.water.get(String(water))?.name, things.fluid.get(String(fluid))?.name]
  return [words, ...names.filter((name) => name !== undefined)].join(', ')
}

function additionWords(entry: EntryOf<'addition'>, things: Things, reader: Reader): string {
  const { volume, concentrate, toMark, strength, meter, additive } = entry
  if (volume === 0) return say('Nothing added')
  if (volume !== undefined)
    return made(say('Added {amount}', { amount: amountOf(volume, strength, reader) }), entry, things)
  if (concentrate !== undefined) return say('Added {volume} of concentrate', { volume: sayVolume(concentrate, reader) })
  const at = amountOf(undefined, strength, reader)
  if (toMark === true)
    return made(
      at === '' ? say('Filled to the mark') : say('Filled to the mark {strength}', { strength: at }),
      entry,
      things,
    )
  if (meter !== undefined) {
    const count = sayNumber(meter.count, 0, reader)
    return at === ''
      ? say('Added by meter, count {count}', { count })
      : say('Added by meter, count {count} {strength}', { count, strength: at })
  }
  if (additive !== undefined) {
    const name = additive.name ?? say('an additive')
    return additive.litres === undefined
      ? say('Added of {name}', { name })
      : say('Added {volume} of {name}', { volume: sayVolume(additive.litres, reader), name })
  }
  return at === '' ? say('Added an unmeasured amount') : say('Added an unmeasured amount {strength}', { strength: at })
}

function receiverName({ to }: EntryOf<'transfer'>, things: Things): string {
  const id = typeof to === 'string' ? to : to !== undefined && 'sump' in to ? to.sump : to?.container
  return things.sump.get(id ?? '')?.name ?? things.container.get(id ?? '')?.name ?? say('somewhere else')
}

/** Everything measured, strength first, each with its unit. */
function readingWords(entry: Reading, reader: Reader): string {
  if (entry.pending === true) return say('Took a sample, result to come')
  const parts = [sayReading(entry, 'strength', reader), levelWords(entry, reader), ...figures(entry, reader)]
  for (const { name, value, unit = '' } of entry.analytes ?? []) {
    if (value !== undefined) parts.push(`${name} ${sayValue(value, 2, reader)} ${unit}`.trim())
  }
  const said = parts.filter((part) => part !== '')
  return said.length === 0 ? say('Read nothing') : said.join(', ')
}

function levelWords(entry: Reading, reader: Reader): string {
  const level = sayReading(entry, 'level', reader)
  if (level === '') return ''
  return entry.pumps === 'running'
    ? say('level {level} with the pumps running', { level })
    : say('level {level}', { level })
}

const figureWords = [
  ['ph', message('pH {value}'), 1],
  ['hardness', message('hardness {value} ppm'), 0],
  ['chloride', message('chloride {value} mg/L'), 0],
  ['conductivity', message('conductivity {value} mS/cm'), 2],
  ['sulfate', message('sulfate {value} mg/L'), 0],
  ['nitrate', message('nitrate {value} mg/L'), 0],
  ['nitrite', message('nitrite {value} mg/L'), 0],
  ['temperature', message('{value} °C'), 0],
  ['bacteria', message('bacteria {value} CFU/mL'), 0],
  ['fungi', message('fungi {value} CFU/mL'), 0],
  ['trampOil', message('tramp oil {value} %'), 1],
  ['dissolvedOxygen', message('oxygen {value} mg/L'), 1],
  ['machineHours', message('machine hours {value} h'), 0],
] as const

function figures(entry: Reading, reader: Reader): string[] {
  return figureWords.flatMap(([field, words, decimals]) => {
    const value = entry[field]
    return value === undefined ? [] : [say(words, { value: sayValue(value, decimals, reader) })]
  })
}
