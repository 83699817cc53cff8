export { madeOnce } from './made-once.ts'
export { formatOf, message, say, type Values } from './say.ts'
export {
  type Catalogue,
  datesLocale,
  inEnglish,
  inLanguage,
  knownNumbers,
  type Language,
  languages,
  learn,
  nearestLanguage,
  type Speech,
  type SystemOfUnits,
  speakAs,
  speech,
  unitsHere,
} from './speech.ts'
