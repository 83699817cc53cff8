import { message } from '@sumpbook/fluid'
import type { ThingField } from '../shop/thing-field.ts'

const days = (test: string, label: string): ThingField => ({
  path: `guidance.own.${test}.everyDays`,
  label,
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
  days('senses', message('Look and smell, every … days')),
  days('ph', message('pH, every … days')),
  figure('ph.low', message('pH at least'), { min: 0, max: 14 }),
  figure('ph.act', message('Act on a fall of pH of more than'), { above: 0, max: 14 }, message('From the fresh fill')),
  figure('ph.change', message('Change at a fall of pH of more than'), { above: 0, max: 14 }),
  days('nitrite', message('Nitrite, every … days')),
  figure('nitrite.high', message('Nitrite at most, mg/L')),
  days('bacteria', message('Dip slide, every … days')),
  figure('bacteria.reasonable', message('Slide no longer good from, CFU/mL'), { above: 0 }),
  figure('bacteria.poor', message('Slide poor from, CFU/mL'), { above: 0 }),
  figure(
    'bacteria.readFromHours',
    message('Slides are read from, hours'),
    { min: 0 },
    message('As their instructions say; empty: 24'),
  ),
  figure('bacteria.readToHours', message('Slides are read until, hours'), { above: 0 }, message('Empty: 72')),
  days('hardness', message('Hardness, every … days')),
  figure('hardness.high', message('Hardness at most, ppm')),
  figure('waterNitrate.high', message('Nitrate of make-up water at most, mg/L')),
]
