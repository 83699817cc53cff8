/** Code of a list of texts: one text with a line each, which compresses better than quotation marks and commas. @throws where a text has lines itself */
export function listAsCode(texts: readonly string[]): string {
  const broken = texts.find((text) => text.includes('\n'))
  if (broken !== undefined) throw new Error(`a sentence with a line break: ${broken}`)
  return texts.length === 0 ? '[]' : `${JSON.stringify(texts.join('\n'))}.split("\\n")`
}

/** Code of texts by names that nothing repeats in, hashes say: the names apart from the texts, which do repeat. */
export function namedAsCode(named: Readonly<Record<string, string>>): string {
  const names = Object.keys(named)
  const texts = listAsCode(Object.values(named))
  return `((texts) => Object.fromEntries(${listAsCode(names)}.map((name, n) => [name, texts[n]])))(${texts})`
}
