export { formatOf, message, say, type Values } from './say.ts'
export {
  type Catalogue,
  datesLocale,
  inLanguage,
  type Language,
  languages,
  learn,
  nearestLanguage,
  type Speech,
  speakAs,
  speech,
} from './speech.ts'
