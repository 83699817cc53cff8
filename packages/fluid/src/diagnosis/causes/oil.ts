import type { Cause } from '../network.ts'

/** Oil that does not belong there, and what it feigns. */
export const oilCauses: readonly Cause[] = [
  {
    id: 'tramp oil leaking in',
    says: 'Way oil, hydraulic oil or oil from parts gets in faster than it is skimmed.',
    prior: 'common',
    shows: [
      ['oil film', 'nearly always', 'osha'],
      ['oil layer', 'often', 'osha'],
      ['tramp oil high', 'nearly always', 'osha'],
      ['yellow-brown colour', 'often', 'osha'],
      ['oil leak on the machine', 'often', 'practice'],
      ['refractometer above titration', 'sometimes', 'dguv'],
      ['rancid smell', 'sometimes', 'osha'],
      ['sticky residue', 'sometimes', 'practice'],
      ['cream on top', 'sometimes', 'practice'],
      ['skin irritation', 'sometimes', 'osha'],
      ['mist in the air', 'sometimes', 'osha'],
      ['short tool life', 'sometimes', 'practice'],
      ['poor finish', 'rarely', 'practice'],
      ['scum', 'sometimes', 'practice'],
      ['filter blocked', 'rarely', 'practice'],
      ['oxygen low', 'sometimes', 'practice'],
      ['dirt', 'rarely', 'practice'],
    ],
    checks: ['Let a sample stand overnight in a measuring glass; watch the use of way and hydraulic oil.'],
    remedies: ['Skim, mend the leak, set way lubrication to its need.'],
  },
  {
    id: 'strength feigned by oil or salts',
    says: 'Oil, dirt or salts lift the refractometer: the fluid is weaker than it reads.',
    prior: 'now and then',
    shows: [
      ['refractometer above titration', 'nearly always', 'dguv'],
      ['rust though the reading is right', 'often', 'practice'],
      ['rust on parts', 'sometimes', 'practice'],
      ['tramp oil high', 'sometimes', 'dguv'],
      ['conductivity high', 'sometimes', 'practice'],
      ['thin and clear', 'rarely', 'practice'],
    ],
    checks: ['Take the strength by titration or a split test, and act on the lower of the two.'],
    remedies: ['Skim; then top up by the second method until both agree again.'],
  },
]
