import type { GuidancePack, GuidanceRule, GuidanceSource } from '../pack.ts'

const page = (edition: string, known: Pick<GuidanceSource, 'readOn' | 'tag'>): GuidanceSource => ({
  document: 'HSE, Metalworking fluids: bacterial contamination',
  section: 'page',
  edition,
  ...known,
})
const read = { readOn: '2026-11-28', tag: 'read' } as const
const checks: GuidanceSource = {
  document: 'HSE, regular checks of fluid quality (COSHH essentials MW5)',
  section: 'daily and weekly checks',
  edition: 'page current in 2026',
  readOn: '2026-11-28',
  tag: 'read',
}

const weekly: GuidanceRule[] = [
  {
    id: 'senses',
    test: 'senses',
    says: { kind: 'every', days: 1 },
    action: 'Look at it and smell it, and write down what has changed.',
    binding: true,
    source: checks,
  },
  {
    id: 'concentration',
    test: 'concentration',
    says: { kind: 'every', days: 7 },
    action: 'Correct it where it is outside what the supplier recommends.',
    binding: true,
    source: checks,
  },
  {
    id: 'ph',
    test: 'ph',
    says: { kind: 'every', days: 7 },
    action: 'Correct what is outside the recommended range. pH does not take the place of a dip slide.',
    binding: true,
    source: checks,
  },
]

/** What the health and safety regulator says of checks and dip slides, before and after its bounds were changed. */
export const unitedKingdom: GuidancePack = {
  id: 'united-kingdom',
  name: 'United Kingdom: HSE',
  editions: [
    {
      id: 'current',
      name: 'page current in 2026',
      rules: [
        ...weekly,
        {
          id: 'bacteria-interval',
          test: 'bacteria',
          says: { kind: 'every', days: 7 },
          action: 'Fewer slides only where your records of slides, strength and pH show that the fluid is kept well.',
          binding: true,
          source: page('current in 2026', read),
        },
        {
          id: 'bacteria',
          test: 'bacteria',
          says: { kind: 'classes', classes: { reasonable: 1e4, poor: 1e6 } },
          action:
            'Good: go on as you do. Reasonable: check the fluid’s condition and bring strength and pH back. Poor: act at once, as your risk assessment says; mostly drain, clean and charge afresh.',
          binding: true,
          source: page('current in 2026; that poor includes its bound is from memory', read),
        },
      ],
    },
    {
      id: '2012',
      name: 'page of November 2012',
      rules: [
        ...weekly,
        {
          id: 'bacteria-interval',
          test: 'bacteria',
          says: { kind: 'every', days: 7 },
          action: 'Weekly for many sumps; the risk assessment may vary it where control is shown to go on.',
          binding: true,
          source: page('28 November 2012', read),
        },
        {
          id: 'bacteria',
          test: 'bacteria',
          says: { kind: 'classes', classes: { reasonable: 1e3, poor: 1e6 } },
          action:
            'Good: nothing more. Reasonable: look at what is done to keep germs down. Poor: act at once, as your risk assessment says.',
          binding: true,
          source: page('28 November 2012', read),
        },
      ],
    },
  ],
}
