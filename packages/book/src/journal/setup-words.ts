import { message, say } from '@sumpbook/fluid'
import type { EntryOf } from '../schema/entries/index.ts'
import type { Things } from '../setup/things.ts'

/** What a thing's fields are called; one that is not here stands by its own name. */
const fieldWords: Readonly<Record<string, string>> = {
  name: message('name'),
  place: message('place'),
  order: message('place on the round'),
  fluid: message('fluid'),
  fillVolume: message('full mark'),
  capacity: message('brim'),
  minVolume: message('pumps’ suction'),
  holdUp: message('what is out in the lines'),
  dipTable: message('dip table'),
  limits: message('limits'),
  class: message('kind'),
  kind: message('kind'),
  brixFactor: message('Brix factor'),
  brixChart: message('chart'),
  minTopUp: message('leanest top-up'),
  maxMixStrength: message('strongest mix poured'),
  pricePerLitre: message('price per litre'),
  hardness: message('hardness'),
  graduation: message('marks on its wall'),
  resolution: message('step of its scale'),
  pads: message('pads'),
  settings: message('settings of the dial'),
  timeZone: message('time zone'),
  units: message('units'),
  readEveryDays: message('days between readings'),
  shifts: message('beginning of the shifts'),
  guidance: message('guidance'),
  additives: message('additives'),
  costs: message('prices and minutes'),
  stock: message('how it is stocked'),
}

/** What a volume is where it is no sump's. */
const containerWords: Readonly<Record<string, string>> = { capacity: message('what it holds') }

/** "Set up Mill 7: full mark, brim". */
export function setupWords({ about, changes }: EntryOf<'setup'>, things: Things): string {
  const called = (field: string): string => {
    const words = about.kind !== 'sump' && Object.hasOwn(containerWords, field) ? containerWords : fieldWords
    return Object.hasOwn(words, field) ? say(words[field]!) : field
  }
  const fields = [...new Set(Object.keys(changes).map(called))].join(', ')
  const name = nameOf(about, changes, things)
  return name === null ? say('Set up: {fields}', { fields }) : say('Set up {name}: {fields}', { name, fields })
}

function nameOf({ kind, id }: EntryOf<'setup'>['about'], { name }: Record<string, unknown>, things: Things) {
  if (kind === 'shop') return say('the shop')
  const known = (things as unknown as Record<string, ReadonlyMap<string, { name?: string }> | undefined>)[kind]
  return known?.get(id ?? '')?.name ?? (typeof name === 'string' ? name : null)
}
