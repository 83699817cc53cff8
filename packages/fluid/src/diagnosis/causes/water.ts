import type { Cause } from '../network.ts'

/** What comes with the water. */
export const waterCauses: readonly Cause[] = [
  {
    id: 'minerals built up',
    says: 'Hard water was poured, or its minerals stayed behind as water evaporated.',
    prior: 'common',
    shows: [
      ['hard', 'nearly always', 'ifa'],
      ['deposits', 'often', 'iwrc'],
      ['scum', 'often', 'iwrc'],
      ['conductivity high', 'often', 'practice'],
      ['emulsion split', 'sometimes', 'iwrc'],
      ['cream on top', 'sometimes', 'practice'],
      ['sticky residue', 'sometimes', 'practice'],
      ['filter blocked', 'rarely', 'practice'],
      ['rust on parts', 'rarely', 'iwrc'],
      ['chloride high', 'rarely', 'practice'],
    ],
    checks: ['Read the hardness of the sump and of the water that is poured.'],
    remedies: ['Top up with demineralised water; where it is far over its limit, part-exchange or charge anew.'],
  },
  {
    id: 'very soft first fill',
    says: 'The charge was made with very soft or demineralised water, which foams until some minerals have gathered.',
    prior: 'now and then',
    shows: [
      ['foam', 'nearly always', 'osha'],
      ['soft', 'nearly always', 'ifa'],
      ['fresh charge', 'often', 'practice'],
    ],
    checks: ['Read the hardness of the fresh charge.'],
    remedies: [
      'Make fresh charges with water of some hardness, as the sheet says; ask the supplier before adding hardness or defoamer.',
    ],
  },
  {
    id: 'chloride or sulfate built up',
    says: 'Corrosive salts have gathered: from tap or softened water, hands, cleaners, parts.',
    prior: 'now and then',
    shows: [
      ['chloride high', 'nearly always', 'practice'],
      ['sulfate high', 'often', 'practice'],
      ['conductivity high', 'often', 'practice'],
      ['rust on parts', 'often', 'iwrc'],
      ['rust on the machine', 'sometimes', 'practice'],
      ['rust though the reading is right', 'often', 'practice'],
      ['stains on aluminium', 'sometimes', 'practice'],
      ['stains on copper', 'rarely', 'practice'],
      ['emulsion split', 'rarely', 'practice'],
    ],
    checks: ['Read chloride and conductivity of the sump and of the water; ask whether the water is softened.'],
    remedies: [
      'Top up with demineralised water, never routinely with softened water; part-exchange where it is far over.',
    ],
  },
  {
    id: 'nitrate in the water',
    says: 'The water that is poured brings nitrate, which germs turn into nitrite.',
    prior: 'seldom',
    shows: [
      ['nitrate high', 'nearly always', 'trgs'],
      ['nitrite high', 'often', 'trgs'],
      ['nitrite rising', 'often', 'trgs'],
    ],
    checks: ['Read the nitrate of the water that is poured.'],
    remedies: ['Blend with demineralised water until it is under its limit (TRGS 611: 50 mg/L).'],
  },
]
