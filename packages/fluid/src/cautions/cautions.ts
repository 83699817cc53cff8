import { say } from '../words/index.ts'

/** How a source is known: a copy of it was read, it stands here from memory, or the trade does it and no source says so. */
export type CautionTag = 'read' | 'from memory' | 'common practice'

/** What to mind at a step, as it is said there. */
export interface Caution {
  /** One or two sentences in our own words, the same on every page, in the API and in the shell. */
  text: string
  /** The step or the condition it stands at. */
  where: string
  /** Document and section; "none" of common practice. */
  source: string
  tag: CautionTag
}

/**
 * Every caution of the product, by its name. A caution stands where its step is; it never takes the place of label, safety data
 * sheet, supplier and local rules, which the first of them says.
 *
 * Source: beside each; `docs/cautions.md` lists them.
 */
export const cautions = {
  guidanceOnly: {
    text: "Guidance only: the fluid's label and safety data sheet, the supplier and local rules come first.",
    where: 'whatever is advised',
    source: 'none',
    tag: 'common practice',
  },
  concentrateLast: {
    text: 'Concentrate goes into water, never water into concentrate. Gloves and eye protection: concentrate burns skin and eyes.',
    where: 'mixing a charge, a top-up or a premix',
    source: 'none',
    tag: 'common practice',
  },
  neatConcentrate: {
    text: "Neat concentrate goes into a sump only where the fluid's sheet allows it.",
    where: 'a pour of concentrate alone',
    source: 'none',
    tag: 'common practice',
  },
  pumpsDrawAir: {
    text: 'Pumps that draw air are damaged and foam the fluid: keep them off until the level is back.',
    where: "a level under the pumps' suction",
    source: 'none',
    tag: 'common practice',
  },
  drawnOffIsWaste: {
    text: 'What is drawn off is waste: keep it apart and hand it over by the local rules.',
    where: 'drawing off, draining, skimming',
    source: 'none',
    tag: 'common practice',
  },
  lockOut: {
    text: 'Lock out the machine before cleaning; look at the cleanout steps first.',
    where: 'changing a charge, cleaning out',
    source: '29 CFR 1910.147 (control of hazardous energy)',
    tag: 'from memory',
  },
  handsIn: {
    text: 'Lock out the machine before a hand goes into it.',
    where: 'upkeep: strainers, skimmers, filters, lines',
    source: '29 CFR 1910.147 (control of hazardous energy)',
    tag: 'from memory',
  },
  cleanerSheet: {
    text: "Gloves, eye protection and dose as the cleaner's label and safety data sheet ask; it is alkaline and burns. Keep it off skin and out of the mist.",
    where: 'cleaning out: mixing, running and draining the cleaner',
    source: 'none',
    tag: 'common practice',
  },
  confinedSpace: {
    text: 'A pit, a tank or a large sump is a confined space: nobody goes in without a permit, tested air and somebody who watches outside.',
    where: 'cleaning out a pit, a tank or a central system',
    source: '29 CFR 1910.146 (permit-required confined spaces)',
    tag: 'from memory',
  },
  magnesiumHydrogen: {
    text: 'Magnesium chips and water-mix make hydrogen: keep wet chips out of closed containers, let air through, no flame and no spark.',
    where: 'a sump on which magnesium is cut; its chips and its waste',
    source: 'DGUV Information 209-090e',
    tag: 'read',
  },
  magnesiumFire: {
    text: 'Never water, foam or coolant on burning magnesium: only what is kept there for metal fires.',
    where: 'a sump on which magnesium is cut',
    source: 'DGUV Information 209-090e',
    tag: 'read',
  },
  alkalineOnFines: {
    text: 'Alkaline cleaner on aluminium or magnesium fines makes hydrogen: take the chips out first, keep lids open and air moving.',
    where: 'cleaning out a sump on which aluminium or magnesium is cut',
    source: 'chemistry of the metals in alkali',
    tag: 'from memory',
  },
  nitriteWithAmines: {
    text: 'Nothing with nitrite goes into a fluid with amines, and no amines into one with nitrite: together they form nitrosamines, which cause cancer.',
    where: 'choosing or dosing an additive; nitrite found in a mix',
    source: 'TRGS 611; 40 CFR 747; 40 CFR 721.4740',
    tag: 'read',
  },
  biocideByLabel: {
    text: 'Biocide goes in by its label and by trained people only.',
    where: 'dosing a biocide or a fungicide',
    source: 'DGUV Information 209-051',
    tag: 'read',
  },
  biocideDoesNotRepair: {
    text: 'A biocide does not repair a fluid that is spoiled: where it smells, has split or is full of growth, change the charge and clean out.',
    where: 'dosing a biocide or a fungicide; a slide full of growth',
    source: 'DGUV Information 209-051',
    tag: 'read',
  },
  endotoxin: {
    text: 'Killing a heavy growth frees endotoxin: ventilate, and keep people out of the mist until it is cleaned out.',
    where: 'dosing a biocide, or cleaner into a foul sump',
    source: 'none at hand',
    tag: 'from memory',
  },
  phCauseFirst: {
    text: 'No dose before the cause is known: a falling pH is mostly growth, a wrong strength or something carried in, and a dose hides it.',
    where: 'a pH that falls',
    source: 'none at hand',
    tag: 'from memory',
  },
  additivesApart: {
    text: 'One additive at a time, never two mixed with each other: some give off poisonous gas together.',
    where: 'dosing an additive',
    source: 'none',
    tag: 'common practice',
  },
  additiveHandling: {
    text: 'Gloves and eye protection as its safety data sheet asks; pour it slowly into fluid that circulates, away from people.',
    where: 'dosing an additive',
    source: 'none',
    tag: 'common practice',
  },
  acidOrBleach: {
    text: 'Never acid and never bleach into a coolant or a foul sump: both free poisonous gas.',
    where: 'cleaning out; a smell; correcting a pH',
    source: 'none at hand',
    tag: 'from memory',
  },
  rottenEggGas: {
    text: 'A smell of rotten eggs over a pit that stood still may be hydrogen sulfide, and stirring frees it: do not lean in, do not start pumps; ventilate and have the air checked first.',
    where: 'a rancid or rotten-egg smell; a sump after a long idle time',
    source: 'none at hand',
    tag: 'from memory',
  },
  skin: {
    text: 'Keep coolant off the skin: gloves where the machine allows them, wash and care for the skin, change wet clothes.',
    where: 'a skin complaint; cleaning out',
    source: 'HSE G403; NIOSH 98-102',
    tag: 'read',
  },
  mist: {
    text: 'Keep mist out of the breath: enclosure shut, extraction on, and wait for it to clear before the door is opened.',
    where: 'a cough; foam and mist; a fluid with growth in it',
    source: 'HSE G402; NIOSH 98-102',
    tag: 'read',
  },
  healthSurveillance: {
    text: 'People who work with these fluids belong under health surveillance of skin and lungs, by the rules of their country.',
    where: 'a health complaint',
    source: 'HSE G402, G403; NIOSH 98-102',
    tag: 'read',
  },
  coughStops: {
    text: 'Cough or a tight chest: stop the exposure and ask occupational health. A low slide does not clear a fluid.',
    where: 'a health complaint',
    source: 'none at hand',
    tag: 'from memory',
  },
  namesStayOut: {
    text: 'Names and diagnoses stay out of the journal: write the sump and the sign, nothing about a person.',
    where: 'writing a health complaint',
    source: 'none at hand',
    tag: 'from memory',
  },
  grownSlide: {
    text: 'A grown slide carries living germs: keep it closed, and throw it away as its maker says.',
    where: 'reading a dip slide',
    source: 'none',
    tag: 'common practice',
  },
  phIsNoSlide: {
    text: 'A pH in order does not stand in for a dip slide.',
    where: 'judging growth by pH',
    source: 'HSE (UK), managing sumps and bacterial contamination',
    tag: 'read',
  },
  wasteCodeOpen: {
    text: 'No code is chosen: which one this waste has is for the shop, its carrier and its authority to say.',
    where: 'a waste container without a code',
    source: 'EU List of Waste (2000/532/EC) and its like',
    tag: 'read',
  },
  wasteSyntheticCode: {
    text: '12 01 10* is for synthetic oils. A synthetic that is mixed with water is an emulsion or a solution, 12 01 08* or 12 01 09*: have the code looked at.',
    where: 'a container of emulsion or rinse water with the code 12 01 10*',
    source: 'EU List of Waste (2000/532/EC)',
    tag: 'read',
  },
  wasteHalogens: {
    text: 'Used oil with more than 1,000 ppm of total halogens is presumed to be hazardous waste until shown otherwise; reclaimed metalworking fluids have an exception of their own.',
    where: 'a container of oil or emulsion of a shop in the United States',
    source: '40 CFR 279.10(b)(1)(ii)',
    tag: 'from memory',
  },
  wasteApart: {
    text: 'Keep streams apart: oil, emulsion, sludge and cleaner mixed together cost more, and may be another waste.',
    where: 'putting waste into a container',
    source: 'none',
    tag: 'common practice',
  },
  noDrain: {
    text: 'No coolant, rinse water or oil goes into a drain without a permit for it.',
    where: 'putting waste into a container',
    source: 'none',
    tag: 'common practice',
  },
  oldConcentrate: {
    text: 'Concentrate past its shelf life, frozen or with a broken seal is used only as its supplier says; what is not used is waste.',
    where: 'a lot that is too old, or came with a broken seal',
    source: 'none',
    tag: 'common practice',
  },
} as const satisfies Record<string, Caution>

/** Name of a caution. */
export type CautionId = keyof typeof cautions

/** The sentences of some cautions, in the order asked, none twice. */
export function sayCautions(ids: readonly CautionId[]): string[] {
  return [...new Set(ids)].map((id) => say(cautions[id].text))
}
