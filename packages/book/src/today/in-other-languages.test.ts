import { type Language, learn, speakAs } from '@sumpbook/fluid'
import { afterEach, beforeAll, expect, test } from 'vitest'
import { type Book, openBook } from '../book.ts'
import { importBookFile } from '../import/import-book.ts'
import { emptyStore, smallShop, testNow, testReading } from '../testing.ts'
import { catalogue as german } from '../words/de.ts'
import { catalogue as spanish } from '../words/es.ts'

const upkeep = [{ id: 'basket', task: 'Chip basket and strainer emptied', sump: 's1', everyDays: 7 }]
const numbers = { en: 'en', de: 'de-DE', es: 'es-ES' } as const
const speak = (language: Language) => speakAs(() => ({ language, numbers: numbers[language] }))

beforeAll(() => {
  learn('de', german)
  learn('es', spanish)
})
afterEach(() => speak('en'))

async function leanShop(): Promise<Book> {
  const store = await emptyStore()
  const shop = { ...smallShop().shop, upkeep }
  const entries = [testReading(1, { brix: 3.5, volume: 162 })]
  await importBookFile(store, JSON.stringify(smallShop({ shop, entries })), testNow)
  return openBook(store, () => testNow)
}

test('one book answers each in the language that is spoken when it is asked, and remembers no sentence', async () => {
  const book = await leanShop()
  const inLanguage = async (language: Language) => {
    speak(language)
    return book.today()
  }
  const first = await inLanguage('en')
  const inGerman = await inLanguage('de')
  expect(inGerman.lede).toMatch(/^1 Behälter zu füllen und 1 weiterer Punkt fällig\. Für den Wagen: /)
  expect(inGerman.items[0]!.why).toMatch(
    /^Jetzt 5,\d % \(\d,\d–\d,\d\), unter dem Sollbereich von 6,0 % bis 10,0 %\. Ohne Eingriff/,
  )
  expect((await inLanguage('es')).lede).toMatch(/^1 depósito por rellenar y 1 cosa pendiente más\. Para el carro: /)
  expect(await inLanguage('en')).toEqual(first)
  expect(await inLanguage('de')).toEqual(inGerman)
})

test('a usual task is said in the reader’s language, and its entry has the words it was taken on with', async () => {
  const book = await leanShop()
  speak('de')
  const [task] = (await book.today()).due
  expect(task).toMatchObject({
    headline: 'Mill 1: Spänekorb und Sieb geleert',
    finish: { kind: 'upkeep', task: 'Chip basket and strainer emptied', result: 'done' },
  })
})
