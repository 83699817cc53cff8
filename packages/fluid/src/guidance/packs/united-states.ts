import type { GuidancePack } from '../pack.ts'

const manual = (section: string) =>
  ({
    document: 'OSHA, Metalworking fluids: best practices manual',
    section,
    edition: '2001',
    readOn: '2026-11-25',
    tag: 'read',
  }) as const

/** Advice and exposure limits; none of those we read sets days for tests or classes for germs. */
export const unitedStates: GuidancePack = {
  id: 'united-states',
  name: 'United States: OSHA, NIOSH, Washington State',
  editions: [
    {
      id: '2001',
      name: 'manual of 2001 with NIOSH 98-102',
      rules: [
        {
          id: 'interval-concentration',
          test: 'concentration',
          says: { kind: 'no-figure', about: 'interval' },
          action: 'Set it in the shop’s own fluid programme, with the supplier.',
          binding: false,
          source: manual('fluid management programme, by a summary'),
        },
        {
          id: 'interval-ph',
          test: 'ph',
          says: { kind: 'no-figure', about: 'interval' },
          action: 'Set it in the shop’s own fluid programme, with the supplier.',
          binding: false,
          source: manual('fluid management programme, by a summary'),
        },
        {
          id: 'ph-low',
          test: 'ph',
          says: { kind: 'ends', low: 8.5, unit: '' },
          action: 'Find out why it fell before anything is added.',
          binding: false,
          source: {
            document: 'Washington State Department of Labor & Industries, on metalworking fluids',
            section: 'pH',
            edition: 'not noted',
            readOn: '2026-11-25',
            tag: 'read',
          },
        },
        {
          id: 'level',
          test: 'level',
          says: { kind: 'ends', low: 70, unit: '% of the full mark' },
          action:
            'Fill it up and find out why: water lost raises the strength, fluid lost at the same strength was carried off.',
          binding: false,
          source: manual('signs that a fluid needs attention, by a summary'),
        },
        {
          id: 'bacteria',
          test: 'bacteria',
          says: { kind: 'no-figure', about: 'classes' },
          action: 'Those we read set no classes for germs: choose bounds of the shop’s own with the supplier.',
          binding: false,
          source: {
            document: 'NIOSH 98-102, Criteria for a recommended standard',
            section: 'fluid maintenance',
            edition: '1998',
            readOn: null,
            tag: 'from memory',
          },
        },
        {
          id: 'mist',
          test: 'mist',
          says: {
            kind: 'ends',
            high: 0.4,
            unit: 'mg/m³ of thoracic particles ({total} in total), over a shift',
            figures: { total: 0.5 },
          },
          action: 'Enclose, extract, lower the flow. The legal limit for oil mist is 5 mg/m³ (OSHA Z-1).',
          binding: false,
          source: {
            document: 'NIOSH 98-102, Criteria for a recommended standard',
            section: 'recommended exposure limit',
            edition: '1998',
            readOn: '2026-11-25',
            tag: 'read',
          },
        },
      ],
    },
  ],
}
