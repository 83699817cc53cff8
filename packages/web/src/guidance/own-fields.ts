import type { ThingField } from '../shop/thing-fields.ts'

const days = (test: string, label: string): ThingField => ({
  path: `guidance.own.${test}.everyDays`,
  label: `${label}, every … days`,
  kind: 'number',
  ends: { min: 1, max: 366 },
})
const figure = (path: string, label: string, ends: ThingField['ends'] = { min: 0 }, hint?: string): ThingField => ({
  path: `guidance.own.${path}`,
  label,
  kind: 'number',
  ...(ends === undefined ? {} : { ends }),
  ...(hint === undefined ? {} : { hint }),
})

/** The shop's own values beside a pack, or alone; an empty field leaves the pack's. */
export const ownFields: readonly ThingField[] = [
  days('senses', 'Look and smell'),
  days('ph', 'pH'),
  figure('ph.low', 'pH at least', { min: 0, max: 14 }),
  figure('ph.act', 'Act on a fall of pH of more than', { above: 0, max: 14 }, 'From the fresh fill'),
  figure('ph.change', 'Change at a fall of pH of more than', { above: 0, max: 14 }),
  days('nitrite', 'Nitrite'),
  figure('nitrite.high', 'Nitrite at most, mg/L'),
  days('bacteria', 'Dip slide'),
  figure('bacteria.reasonable', 'Slide no longer good from, CFU/mL', { above: 0 }),
  figure('bacteria.poor', 'Slide poor from, CFU/mL', { above: 0 }),
  figure('bacteria.readFromHours', 'Slides are read from, hours', { min: 0 }, 'As their instructions say; empty: 24'),
  figure('bacteria.readToHours', 'Slides are read until, hours', { above: 0 }, 'Empty: 72'),
  days('hardness', 'Hardness'),
  figure('hardness.high', 'Hardness at most, ppm'),
  figure('waterNitrate.high', 'Nitrate of make-up water at most, mg/L'),
]
