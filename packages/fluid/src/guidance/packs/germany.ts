import type { GuidancePack, GuidanceSource } from '../pack.ts'

const trgs = (section: string): GuidanceSource => ({
  document: 'TRGS 611, Technical rule for hazardous substances',
  section,
  edition: 'May 2007',
  readOn: '2026-11-28',
  tag: 'read',
})
const rule109003 = (section: string, known: Pick<GuidanceSource, 'readOn' | 'tag'>): GuidanceSource => ({
  document: 'DGUV Regel 109-003, Work with coolants',
  section,
  edition: 'not noted (formerly BGR 143)',
  ...known,
})
const read = { readOn: '2026-11-28', tag: 'read' } as const
const annex = { readOn: '2026-11-25', tag: 'read' } as const

/** The technical rule on nitrosamines, and what the accident insurers of the trade ask for. */
export const germany: GuidancePack = {
  id: 'germany',
  name: 'Germany: TRGS 611, DGUV Regel 109-003, DGUV Information 209-051',
  editions: [
    {
      id: '2007',
      name: 'TRGS 611 of May 2007',
      rules: [
        {
          id: 'senses',
          test: 'senses',
          says: { kind: 'every', days: 1 },
          action:
            'Write down what has changed: colour, foam, residue, a split, oil on top, smell, growth that can be seen.',
          binding: true,
          source: rule109003('Annex 3; 7.1.1', annex),
        },
        {
          id: 'concentration',
          test: 'concentration',
          says: { kind: 'every', days: 7 },
          action:
            'Bring it back to its band. Where refractometer and titration disagree much, have a laboratory decide.',
          binding: true,
          source: rule109003('Annex 3; 7.1.1', annex),
        },
        {
          id: 'ph',
          test: 'ph',
          says: { kind: 'every', days: 7 },
          action:
            'Use strips in steps of {low} to {high}, or a meter whose probe is clean of oil; no universal indicator.',
          figures: { low: 0.2, high: 0.3 },
          binding: true,
          source: rule109003('Annex 3; 7.1.1', annex),
        },
        {
          id: 'ph-fall',
          test: 'ph',
          says: { kind: 'fall', by: 0.5, asks: 'act' },
          action: 'Find the cause first: growth, a wrong strength, something carried in. Ask the supplier.',
          binding: true,
          source: rule109003('Annex 3', annex),
        },
        {
          id: 'ph-change',
          test: 'ph',
          says: { kind: 'fall', by: 1, asks: 'change' },
          action: 'Change the charge and clean out.',
          binding: true,
          source: rule109003('Annex 3', { readOn: null, tag: 'from memory' }),
        },
        {
          id: 'nitrite',
          test: 'nitrite',
          says: { kind: 'every-unless-calm', days: 7, calm: { below: 10, inARow: 3, longest: 28 } },
          action:
            'Strips will do. The longer interval needs every result written down; above 10 mg/L it is weekly again.',
          binding: true,
          source: trgs('5.3 (1), (2)'),
        },
        {
          id: 'nitrite-high',
          test: 'nitrite',
          says: { kind: 'ends', high: 20, unit: 'mg/L' },
          action:
            'Change all or part of the fluid, or have the maker of the fluid name a suitable inhibitor. Find where the nitrite comes from.',
          binding: true,
          source: trgs('5.3 (3)'),
        },
        {
          id: 'water-nitrate',
          test: 'waterNitrate',
          says: { kind: 'ends', high: 50, unit: 'mg/L' },
          action:
            'Blend the make-up water with demineralised or other water low in nitrate until it is under the limit.',
          binding: true,
          source: trgs('5.2'),
        },
        {
          id: 'water-nitrate-interval',
          test: 'waterNitrate',
          says: { kind: 'no-figure', about: 'interval' },
          action: 'Check the make-up water from time to time, or ask the waterworks.',
          binding: false,
          source: trgs('5.2 (1)'),
        },
        {
          id: 'bacteria',
          test: 'bacteria',
          says: { kind: 'no-figure', about: 'classes' },
          action: 'It sets no limit for germs: judge by look, smell, pH and how the count moves.',
          binding: false,
          source: {
            document: 'DGUV Information 209-051, Germs in water-mixed coolants',
            section: 'on limits',
            edition: 'as quoted',
            readOn: '2026-11-25',
            tag: 'read',
          },
        },
        {
          id: 'bacteria-interval',
          test: 'bacteria',
          says: { kind: 'no-figure', about: 'interval' },
          action:
            'The plan of tests does not name slides: take them where smell, pH or a history of growth ask for it.',
          binding: false,
          source: rule109003('7.1.1', read),
        },
      ],
    },
  ],
}
