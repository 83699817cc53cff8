import type { BookDocument } from '../book-document.ts'

/** What the invented shop says its work costs, in euros; no advice for any other. */
export const costs: BookDocument['shop']['costs'] = {
  labourPerHour: 42,
  machinePerHour: 65,
  minutesPerStop: 4,
  cleanerPerLitre: 7.2,
  wastePerLitre: 0.28,
  wasteStreams: [
    { stream: 'Skimmed oil', perLitre: 0.12 },
    { stream: 'Grinding sludge', perLitre: 0.45 },
  ],
  wastePerPickup: 95,
  additives: [
    { name: 'Defoamer D', perLitre: 14 },
    { name: 'Preservative P', perLitre: 21 },
  ],
}
