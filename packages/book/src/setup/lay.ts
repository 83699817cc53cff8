type Fields = Record<string, unknown>

/** Fields of which a change names only some figures: the others stay as they were. */
const figureByFigure = new Set(['costs'])

const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/**
 * Lays changes over the fields of a thing: each field takes the value of the change, those that are kept figure by figure only the figures
 * that the change names. Null takes a value away.
 */
export function lay(fields: Fields, changes: Fields): void {
  for (const [field, value] of Object.entries(changes)) {
    const before = fields[field]
    const merges = figureByFigure.has(field) && isFields(before) && isFields(value)
    fields[field] = merges ? { ...before, ...value } : value
  }
}

/** What is left once nulls have taken away what they name. */
export function settled(fields: Fields): Fields {
  return Object.fromEntries(
    Object.entries(fields)
      .filter(([, value]) => value !== null && value !== undefined)
      .map(([field, value]) => [field, figureByFigure.has(field) && isFields(value) ? settled(value) : value]),
  )
}
