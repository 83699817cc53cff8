import type { AdditiveDocument } from '../book-document.ts'

/** What the example shop gives beside concentrate and water: invented, as are their labels; no advice for any product. */
export const additives: readonly AdditiveDocument[] = [
  {
    id: 'defoamer',
    name: 'Defoamer D',
    kind: 'defoamer',
    dose: { low: 0.05, high: 0.2, unit: 'mL/L' },
    minimumDays: 3,
    most: { amount: 0.6, days: 30 },
    label: 'Invented label of the example shop, side 2',
  },
  {
    id: 'preservative',
    name: 'Preservative P',
    kind: 'biocide',
    dose: { low: 1, high: 2, unit: 'mL/L' },
    minimumDays: 28,
    most: { amount: 4, days: 90 },
    label: 'Invented label of the example shop, side 3',
    who: 'keeper',
  },
]
