import type { Cause } from '../network.ts'
import type { Remedy } from '../remedy.ts'

const biocide: Remedy = {
  cautions: ['biocideByLabel', 'biocideDoesNotRepair', 'endotoxin'],
  after: 'Ask the supplier first.',
}

/** What grows. */
export const growthCauses: readonly Cause[] = [
  {
    id: 'bacterial growth',
    says: 'Bacteria feed on the fluid: they sour it, eat its inhibitors and take the pH down.',
    prior: 'common',
    shows: [
      ['bacteria high', 'nearly always', 'hse'],
      ['rancid smell', 'often', 'osha'],
      ['sour smell', 'often', 'osha'],
      ['falling pH', 'often', 'iwrc'],
      ['low pH', 'often', 'iwrc'],
      ['grey-black colour', 'sometimes', 'osha'],
      ['oxygen low', 'often', 'practice'],
      ['rust on parts', 'sometimes', 'iwrc'],
      ['rust though the reading is right', 'sometimes', 'practice'],
      ['emulsion split', 'sometimes', 'practice'],
      ['filter blocked', 'rarely', 'practice'],
      ['skin irritation', 'sometimes', 'osha'],
      ['cough or chest tightness', 'sometimes', 'niosh'],
      ['fever or aching after work', 'sometimes', 'niosh'],
      ['nitrite rising', 'rarely', 'practice'],
      ['nitrite high', 'rarely', 'practice'],
      ['stood idle', 'sometimes', 'osha'],
      ['ammonia smell', 'rarely', 'practice'],
      ['slime', 'rarely', 'practice'],
    ],
    checks: ['Read a dip slide, and the pH against that of the fresh charge.'],
    remedies: [
      'Take away what feeds it: skim the oil, clear the chips, circulate, hold the strength in its band.',
      biocide,
      'A septic fluid goes now: clean out with a system cleaner, rinse, charge anew.',
    ],
  },
  {
    id: 'growth without air',
    says: 'Germs that live without air work under oil, in sludge or while the fluid stands; they make hydrogen sulfide from sulfate.',
    prior: 'now and then',
    shows: [
      ['rotten-egg smell', 'nearly always', 'osha'],
      ['rancid smell', 'sometimes', 'osha'],
      ['stood idle', 'often', 'osha'],
      ['oil layer', 'often', 'osha'],
      ['grey-black colour', 'often', 'osha'],
      ['oxygen low', 'nearly always', 'practice'],
      ['sulfate high', 'sometimes', 'practice'],
      ['bacteria high', 'sometimes', 'practice'],
      ['falling pH', 'sometimes', 'practice'],
      ['low pH', 'sometimes', 'practice'],
      ['dirt', 'sometimes', 'practice'],
    ],
    checks: [
      'Have the air over the pit checked by a trained person first. Then look for an oil layer and for sludge in corners that do not flow.',
    ],
    remedies: [
      'Only once the air is checked: skim the oil, take out the sludge, keep the fluid moving on idle days.',
      biocide,
      'A septic fluid goes now: clean out, charge anew.',
    ],
  },
  {
    id: 'fungi and biofilm',
    says: 'Fungi and slime grow on walls, in lines and on filters, and seed every new charge.',
    prior: 'now and then',
    shows: [
      ['slime', 'nearly always', 'osha'],
      ['fungi high', 'often', 'practice'],
      ['filter blocked', 'often', 'practice'],
      ['weak jet', 'sometimes', 'practice'],
      ['sour smell', 'sometimes', 'practice'],
      ['skin irritation', 'rarely', 'hse'],
      ['cough or chest tightness', 'rarely', 'hse'],
    ],
    checks: ['Look under covers, in the return trough and at the filter; read a slide for fungi.'],
    remedies: [
      'Mechanical cleaning of walls, lines and filter, then a system cleaner by its label; without it the next charge is seeded.',
      biocide,
    ],
  },
  {
    id: 'seeded by the last cleanout',
    says: 'Old fluid, sludge or slime stayed behind when the sump was cleaned, and the fresh charge goes the way of the old.',
    prior: 'seldom',
    shows: [
      ['fresh charge', 'often', 'practice'],
      ['just cleaned', 'often', 'practice'],
      ['rancid smell', 'often', 'practice'],
      ['bacteria high', 'often', 'practice'],
      ['falling pH', 'often', 'practice'],
      ['slime', 'sometimes', 'practice'],
      ['grey-black colour', 'sometimes', 'practice'],
    ],
    checks: ['Read a slide one and two weeks after the charge; look into the corners that hold fluid.'],
    remedies: [
      'Clean out again with every line, hose and corner, rinse, and accept it on pH, look, smell and a slide.',
    ],
  },
  {
    id: 'nitrogen compounds breaking down',
    says: 'Amines or other nitrogen compounds of the fluid break down, by germs or on hot chips, and give off ammonia.',
    prior: 'seldom',
    shows: [
      ['ammonia smell', 'nearly always', 'practice'],
      ['stains on copper', 'sometimes', 'practice'],
      ['eye or throat irritation', 'sometimes', 'practice'],
      ['falling pH', 'rarely', 'practice'],
      ['nitrite rising', 'rarely', 'practice'],
    ],
    checks: ['Read pH, nitrite and a dip slide; ask the supplier what of the fluid can do so.'],
    remedies: ['Ventilate, add nothing; the supplier decides whether the fluid can stay.'],
  },
]
