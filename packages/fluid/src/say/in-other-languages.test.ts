/** Whole sentences in German and Spanish, each written by hand; how they are put in order and bent is judged here, not what they reckon. */
import { afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { dayNumber } from '../calendar/day-number.ts'
import { sayCautions } from '../cautions/index.ts'
import { cleanoutSheet } from '../cleanout/sheet.ts'
import { dispense } from '../recipe/containers.ts'
import { topUp } from '../recipe/top-up.ts'
import { catalogue as german } from '../words/de.ts'
import { catalogue as spanish } from '../words/es.ts'
import { type Language, learn, speakAs } from '../words/index.ts'
import { sayByDate, sayCalendarDay, sayOnDate } from './calendar-days.ts'
import { sayChance } from './chance.ts'
import { sayCleanout } from './cleanout-sheet.ts'
import { sayCost, sayMonth } from './cost.ts'
import { sayDayAhead, sayOnDay, sayUntilDay } from './days.ts'
import { sayDose } from './dose.ts'
import { sayDoubt } from './doubt.ts'
import { saySource, sayTestsDue } from './guidance.ts'
import { lowerFirst, sayChoice, sayList } from './phrases.ts'
import { sayRecipe } from './recipe.ts'
import { sayCrossing, sayNextCheck, sayStanding } from './standing.ts'
import { sayPacks, sayStock } from './stock.ts'
import { sayRound } from './today-list.ts'
import { sayUnit } from './unit-word.ts'
import { sayNumber, sayPercent, sayVolume } from './units.ts'
import { sayUpkeep } from './upkeep.ts'

const metric = { units: 'metric' } as const
// 25 November 2026 is a Wednesday (ISO week 48 of 2026).
const seen = { timeZone: 'Europe/Berlin', now: '2026-11-25T09:00:00Z' }
const rule = {
  document: 'DGUV Regel 109-003, Work with coolants',
  section: 'Annex 3',
  edition: 'not noted (formerly BGR 143)',
  readOn: null,
  tag: 'from memory',
} as const
const calendar = { ...metric, today: dayNumber('2026-11-25') }
const sump = { volume: 162, concentration: 5.6, fillVolume: 200, target: 8, band: { low: 6, high: 10 } }
const poured = { ...metric, fillVolume: 200, waterNames: { di: 'VE-Wasser' } } as const
const recipe = topUp(sump, { waters: [{ id: 'di', kind: 'deionised' }] })
const dispensed = dispense(recipe.add!, { name: 'bucket', capacity: 12, graduation: 1 })
const standing = {
  concentration: { mean: 6.1, low90: 5.6, high90: 6.6 },
  volume: { mean: 1240, low90: 1225, high90: 1255 },
  mark: 1310,
}
const doubt = {
  kind: 'unlogged-addition',
  probability: 0.93,
  volume: 40,
  found: { quantity: 'brix', read: 9.8, expected: 5.3, low90: 5, high90: 5.6 },
  open: true,
} as const
const crossing = {
  limit: 'concentration.high',
  probability: 0.9,
  earliest: '2026-11-27T09:00:00Z',
  likely: '2026-11-30T09:00:00Z',
} as const
const dose = {
  ...metric,
  additive: { name: 'Blue Guard', kind: 'biocide', unit: 'mL', low: 1, label: '' },
  sump: 'Mill 3',
} as const
const cleanout = cleanoutSheet({
  volume: 200,
  heldBack: 10,
  cleanerPercent: 2,
  rinsePercent: 2,
  rinseFraction: 0.4,
  rinses: 1,
  target: 8,
  hours: 4,
  solids: null,
  metals: null,
  enterable: false,
  foul: null,
  changeOver: null,
})
const stock = {
  name: 'Blue 40',
  stock: {
    litres: 0,
    lots: [],
    missing: 0,
    belowNothingOn: null,
    overdrawn: [],
    unknownLots: [],
    counts: [],
    uses: [],
    firstDay: null,
  },
  demand: null,
  ahead: null,
  order: null,
  packSize: 200,
  onOrder: [],
}

const speak = (language: Language, numbers: string) => speakAs(() => ({ language, numbers }))

beforeAll(() => {
  learn('de', german)
  learn('es', spanish)
})
afterEach(() => speak('en', 'en'))

describe('in German', () => {
  beforeEach(() => speak('de', 'de-DE'))

  test('a recipe says what to do in the infinitive, and counts its buckets', () => {
    const words = sayRecipe(recipe, { ...poured, dispensed })
    expect(words.headline).toBe('38 L mit 18,2 % nachfüllen')
    expect(words.how).toBe(
      '31,1 L VE-Wasser, dann 6,9 L Konzentrat hinein. In Eimern zu 12 L: 2 volle und 7 L Wasser, zuletzt 7 L Konzentrat; so abgemessen sind das 18,4 %.',
    )
    expect(words.outcome).toBe('Danach steht er bei 8,0 %, Füllstand an der Marke.')
    expect(words.because).toEqual(['Unter dem Sollbereich.'])
  })

  test('one bucket is one', () => {
    const one = { ...dispensed, fullWater: 1, restWater: 0 }
    expect(sayRecipe(recipe, { ...poured, dispensed: one }).how).toContain(
      'In Eimern zu 12 L: 1 voller Wasser, zuletzt',
    )
  })

  test('where a sump stands, drifts and is read next', () => {
    expect(sayStanding(standing, metric)).toBe('Steht bei 6,1 % (5,6–6,6) in etwa 1240 L von 1310 L.')
    expect(sayCrossing(crossing, seen)).toBe(
      'Verlässt wahrscheinlich am Montag den Sollbereich, frühestens am Freitag.',
    )
    expect(sayCrossing({ ...crossing, probability: 0.3, earliest: seen.now }, seen)).toBe(
      'In 3 von 10 Fällen verlässt er innerhalb von sechs Wochen den Sollbereich, vielleicht schon heute.',
    )
    expect(sayNextCheck({ at: '2026-12-03T06:00:00Z', because: 'rule' }, seen)).toBe('Nächste Kontrolle am Do. 3. Dez.')
  })

  test('a doubt names what was read, what was expected and its story', () => {
    expect(sayDoubt(doubt, metric)).toBe(
      'Gemessen 9,8 °Brix, erwartet 5,0 bis 5,6 °Brix: wahrscheinlich etwa 40 L Emulsion, die niemand aufgeschrieben hat. Zuerst noch einmal messen; bleibt es dabei, den fehlenden Eintrag nachtragen.',
    )
  })

  test('days take the preposition they need', () => {
    expect(sayOnDay('2026-11-26T06:00:00Z', seen)).toBe('morgen')
    expect(sayOnDay('2026-11-27T06:00:00Z', seen)).toBe('am Freitag')
    expect(sayUntilDay('2026-11-27T06:00:00Z', seen)).toBe('bis Freitag')
    expect(sayDayAhead('2026-12-02T06:00:00Z', seen)).toBe('Mi. 2. Dez.')
    expect(sayOnDate(dayNumber('2026-12-02'), calendar)).toBe('am 2. Dezember')
    expect(sayByDate(dayNumber('2026-12-02'), calendar)).toBe('bis zum 2. Dezember')
    expect(sayMonth('2026-11')).toBe('November 2026')
    expect([sayUnit('CFU/mL'), sayUnit('mg/L')]).toEqual(['KBE/mL', 'mg/L'])
  })

  test('a dose is never more than its label, and days are counted', () => {
    const given = { outcome: 'dose', least: 200, most: 400, volume: 200, already: 0, thinnest: 2 } as const
    expect(sayDose(given, dose).headline).toBe('200 mL bis 400 mL Blue Guard in Mill 3, niemals mehr')
    expect(sayDose(given, dose).why).toBe(
      'Laut Etikett, für 200 L: die kleinste Menge, die wahrscheinlich in Mill 3 ist.',
    )
    const words = sayDose({ outcome: 'too-soon', inDays: 0.4 }, dose)
    expect(words.headline).toBe('Jetzt kein Blue Guard')
    expect(words.why).toBe('Das Etikett verlangt mehr Tage zwischen den Dosen: wieder in 1 Tag.')
    expect(sayDose({ outcome: 'too-soon', inDays: 2 }, dose).why).toContain('wieder in 2 Tagen.')
    expect(words.cautions[0]).toBe('Biozid nur nach Etikett und nur durch geschulte Personen zugeben.')
  })

  test('plurals are those of the language', () => {
    expect(sayRound(1)).toBe('Der Rundgang: 1 Behälter ist zu messen.')
    expect(sayRound(12_000)).toBe('Der Rundgang: 12.000 Behälter sind zu messen.')
    expect(sayPacks(1, 200, metric)).toBe('1 Fass zu 200 L')
    expect(sayPacks(2, 200, metric)).toBe('2 Fässer zu 200 L')
    expect(sayTestsDue(['ph', 'nitrite', 'bacteria'], 'Mill 7')).toBe('pH, Nitrit und Eintauchnährboden fällig: Mill 7')
  })

  test('a name of several words keeps its capital', () => {
    expect(lowerFirst('Enthärtetes Wasser')).toBe('Enthärtetes Wasser')
    expect(sayList(['Ana', 'Ben', 'Kim'])).toBe('Ana, Ben und Kim')
    expect(sayChoice(['ppm', '°dH', 'gpg'])).toBe('ppm, °dH oder gpg')
  })

  test('money is written as the reader writes it', () => {
    const parts = [
      { part: 'concentrate', cents: 31_000 },
      { part: 'rounds', cents: 4_100 },
    ] as const
    expect(sayCost('November 2026', parts, { currency: 'EUR' })).toBe(
      'November 2026 kostete 351\u00a0€: 310\u00a0€ Konzentrat und 41\u00a0€ Arbeit auf Rundgängen.',
    )
  })

  test('cautions are as strong as the English ones', () => {
    expect(sayCautions(['guidanceOnly', 'handsIn'])).toEqual([
      'Nur zur Orientierung: Etikett und Sicherheitsdatenblatt des KSS, der Lieferant und die örtlichen Vorschriften gehen vor.',
      'Maschine abschalten und gegen Wiedereinschalten sichern, bevor eine Hand hineingeht.',
    ])
  })

  test('where a rule stands', () => {
    expect(saySource(rule)).toBe(
      'DGUV Regel 109-003, Tätigkeiten mit Kühlschmierstoffen, Anhang 3, Ausgabe: nicht vermerkt (früher BGR 143); aus dem Gedächtnis, nicht nachgelesen',
    )
  })
})

describe('in Spanish', () => {
  beforeEach(() => speak('es', 'es'))

  test('a recipe says what to do in the infinitive, and counts its buckets', () => {
    const words = sayRecipe(recipe, { ...poured, waterNames: { di: 'agua desionizada' }, dispensed })
    expect(words.headline).toBe('Rellenar 38 L al 18,2 %')
    expect(words.how).toBe(
      '31,1 L de agua desionizada y luego 6,9 L de concentrado dentro. En cubos de 12 L: 2 llenos y 7 L de agua, y al final 7 L de concentrado; así medido sale al 18,4 %.',
    )
    expect(words.outcome).toBe('Quedará al 8,0 %, con el nivel en la marca.')
  })

  test('where a sump stands, drifts and is read next', () => {
    expect(sayStanding(standing, metric)).toBe('Está al 6,1 % (5,6–6,6) en unos 1240 L de 1310 L.')
    expect(sayCrossing(crossing, seen)).toBe(
      'Es probable que el lunes salga de su margen; como muy pronto, el viernes.',
    )
    expect(sayNextCheck({ at: '2026-12-03T06:00:00Z', because: 'band' }, seen)).toBe(
      'Próximo control el jue 3 dic, antes de que pueda salir de su margen.',
    )
  })

  test('a doubt names what was read, what was expected and its story', () => {
    expect(sayDoubt({ ...doubt, kind: 'misread', volume: null }, metric)).toBe(
      'Leído: 9,8 °Brix; esperado: 5,0 a 5,6 °Brix. Muy probable: mal leído o mal tecleado. Primero volver a medir.',
    )
  })

  test('days take the article they need', () => {
    expect(sayOnDay('2026-11-25T20:00:00Z', seen)).toBe('hoy')
    expect(sayOnDay('2026-11-26T06:00:00Z', seen)).toBe('mañana')
    expect(sayOnDay('2026-11-27T06:00:00Z', seen)).toBe('el viernes')
    expect(sayUntilDay('2026-11-27T06:00:00Z', seen)).toBe('hasta el viernes')
    expect(sayUntilDay('2026-11-26T06:00:00Z', seen)).toBe('hasta mañana')
    expect(sayOnDate(dayNumber('2026-12-02'), calendar)).toBe('el 2 de diciembre')
    expect(sayByDate(dayNumber('2026-12-02'), calendar)).toBe('a más tardar el 2 de diciembre')
    expect(sayMonth('2026-11')).toBe('Noviembre de 2026')
    expect([sayUnit('CFU/mL'), sayUnit('mg/L')]).toEqual(['UFC/mL', 'mg/L'])
  })

  test('a list has its "e" before an i, a choice its "u" before an o', () => {
    expect(sayList(['pH', 'nitritos', 'hongos'])).toBe('pH, nitritos y hongos')
    expect(sayList(['Ana', 'Inés'])).toBe('Ana e Inés')
    expect(sayChoice(['siete', 'ocho'])).toBe('siete u ocho')
  })

  test('chances, plurals and upkeep', () => {
    expect(sayChance(0.7)).toBe('7 de cada 10')
    expect(sayPacks(1, 200, metric)).toBe('1 bidón de 200 L')
    expect(sayPacks(2, 200, metric)).toBe('2 bidones de 200 L')
    const task = {
      everyDays: 1,
      sinceDays: 2,
      dueInDays: -1,
      slipping: false,
      times: 1,
      late: 1,
      medianDaysLate: null,
    } as const
    expect(sayUpkeep(task)).toBe('Cada día, hecho por última vez hace 2 días; 1 día de retraso.')
    expect(sayUpkeep({ ...task, everyDays: 7, sinceDays: null, dueInDays: 2 })).toBe(
      'Cada 7 días, aún sin anotar; toca en 2 días.',
    )
  })

  test('stock that nobody can foretell is said to be so', () => {
    expect(sayStock(stock, calendar)).toBe('Blue 40: sin existencias; todavía no se sabe cuánto se va en una semana.')
  })

  test('a cleanout sums up its steps', () => {
    if (cleanout.outcome !== 'sheet') throw new Error(cleanout.outcome)
    expect(sayCleanout(cleanout, metric)).toMatch(
      /^\d+ pasos con 1 aclarado: la máquina está parada unas [\d,]+ h, alguien la atiende [\d,]+ h, y \d+ L pasan a ser residuos\.$/,
    )
  })

  test('where a rule stands', () => {
    expect(saySource(rule)).toBe(
      'DGUV Regel 109-003, trabajos con fluidos de corte, anexo 3, edición: no anotada (antes BGR 143); de memoria, no releído',
    )
  })
})

describe('numbers apart from the language', () => {
  test('English sentences with German number signs', () => {
    speak('en', 'de-DE')
    expect(sayStanding(standing, metric)).toBe('Stands at 6,1 % (5,6–6,6) in about 1240 L of 1310 L.')
    expect(sayRound(12_000)).toBe('The round: 12.000 sumps are due to be read.')
    expect(sayCalendarDay(dayNumber('2026-12-02'), calendar)).toBe('2 December')
  })

  test('German sentences with English number signs', () => {
    speak('de', 'en-US')
    expect(sayRecipe(recipe, poured).headline).toBe('38 L mit 18.2 % nachfüllen')
    expect(sayRound(12_000)).toBe('Der Rundgang: 12,000 Behälter sind zu messen.')
    expect(sayOnDate(dayNumber('2026-12-02'), calendar)).toBe('am 2. Dezember')
    expect(sayNumber(12_345.6, 1)).toBe('12,345.6')
  })

  test.each([
    ['en', 'en', '6.0 %'],
    ['de', 'de-DE', '6,0 %'],
    ['es', 'es', '6,0 %'],
    ['de', 'de-CH', '6.0 %'],
  ] as const)('percent in %s with the signs of %s is %s', (language, numbers, words) => {
    speak(language, numbers)
    expect(sayPercent(6, metric)).toBe(words)
  })

  test('units keep their symbols in every language', () => {
    speak('es', 'es')
    expect(sayVolume(3.785411784 * 10, { units: 'us' })).toBe('10 gal')
  })

  test('English lists have no comma before their "and", and its names lose their capital', () => {
    speak('en', 'de-DE')
    expect(sayList(['a', 'b', 'c'])).toBe('a, b and c')
    expect(sayChoice(['a', 'b', 'c'])).toBe('a, b or c')
    expect(lowerFirst('Deionised water')).toBe('deionised water')
  })
})
