import type { Cause } from '../network.ts'

/** What machine, pump, filter and enclosure do. */
export const machineCauses: readonly Cause[] = [
  {
    id: 'fines and sludge',
    says: 'Fines are not taken out: filter, conveyor or settling does not keep up, sludge gathers.',
    prior: 'common',
    shows: [
      ['dirt', 'nearly always', 'osha'],
      ['filter blocked', 'often', 'practice'],
      ['grey-black colour', 'sometimes', 'practice'],
      ['poor finish', 'often', 'practice'],
      ['short tool life', 'often', 'practice'],
      ['weak jet', 'sometimes', 'practice'],
      ['skin irritation', 'sometimes', 'osha'],
      ['rancid smell', 'rarely', 'practice'],
      ['sticky residue', 'rarely', 'practice'],
    ],
    checks: ['Let a sample settle in a glass; look at the filter and at the sludge on the floor of the sump.'],
    remedies: ['Service the filter, take out the sludge, watch what the next job brings in.'],
  },
  {
    id: 'flow too small',
    says: 'Too little fluid reaches the tool: blocked strainer or nozzle, worn pump, wrong aim.',
    prior: 'now and then',
    shows: [
      ['weak jet', 'nearly always', 'practice'],
      ['short tool life', 'often', 'practice'],
      ['poor finish', 'sometimes', 'practice'],
      ['filter blocked', 'often', 'practice'],
      ['fluid hot', 'sometimes', 'practice'],
      ['pump draws air', 'sometimes', 'practice'],
    ],
    checks: ['Catch the jet in a bucket for ten seconds; look at strainer, nozzles and pressure.'],
    remedies: ['Clean strainer and nozzles, aim them; have the pump looked at, locked out.'],
  },
  {
    id: 'air drawn in',
    says: 'Air is beaten in: low level, a leak on the suction side, returns that fall too far, too little time to settle.',
    prior: 'now and then',
    shows: [
      ['foam', 'often', 'osha'],
      ['pump draws air', 'nearly always', 'practice'],
      ['level low', 'often', 'osha'],
      ['weak jet', 'sometimes', 'practice'],
      ['mist in the air', 'rarely', 'practice'],
    ],
    checks: ['Bring the level to the mark, run, and look whether the foam falls; look at the suction side.'],
    remedies: ['Level first, whatever the strength; mend the suction side, lead returns under the surface.'],
  },
  {
    id: 'mist not held back',
    says: 'Mist escapes: extraction weak or blocked, guards open, pressure or speed too high.',
    prior: 'now and then',
    shows: [
      ['mist in the air', 'nearly always', 'osha'],
      ['cough or chest tightness', 'often', 'niosh'],
      ['eye or throat irritation', 'often', 'osha'],
      ['fever or aching after work', 'sometimes', 'niosh'],
    ],
    checks: ['Have extraction and filters examined and the mist measured by somebody competent.'],
    remedies: [
      'Close guards, wait before opening the door, mend the extraction, lower pressure and flow to what the cut needs.',
    ],
  },
  {
    id: 'fluid runs hot',
    says: 'More heat goes in than comes out: chiller, small sump, hard use.',
    prior: 'seldom',
    shows: [
      ['fluid hot', 'nearly always', 'practice'],
      ['temperature high', 'nearly always', 'practice'],
      ['low and rich', 'sometimes', 'practice'],
      ['level low', 'sometimes', 'practice'],
      ['mist in the air', 'sometimes', 'practice'],
      ['rancid smell', 'rarely', 'practice'],
    ],
    checks: ['Read the temperature over a shift; look at chiller and fans.'],
    remedies: ['Service the chiller, keep the level at the mark.'],
  },
  {
    id: 'metals in contact or stored damp',
    says: 'Parts rust beside other metals, under wet chips, in damp or acid air, though the fluid may be right.',
    prior: 'now and then',
    shows: [
      ['rust on parts', 'often', 'practice'],
      ['rust though the reading is right', 'often', 'practice'],
      ['stains on aluminium', 'rarely', 'practice'],
      ['stains on copper', 'rarely', 'practice'],
    ],
    checks: [
      'Where do parts rust: on the machine, in the bin, in store? A chip test on filter paper tells the fluid’s share.',
    ],
    remedies: ['Dry and separate parts, protect them for storage; look for acid or salt air.'],
  },
]
