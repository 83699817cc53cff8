import { cautions } from '@sumpbook/fluid'

/** What stands in tables of data and is said from there, as `say(cautions[id].text)`. */
export function tableMessages(): string[] {
  return [...Object.values(cautions).map(({ text }) => text)]
}
