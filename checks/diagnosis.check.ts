/**
 * Diagnosis: the inference against published networks, the rankings against public guidance.
 *
 * Networks, from memory: S. Russell and P. Norvig, Artificial Intelligence: A Modern Approach, the burglary network (prior of burglary
 * 0.001, of earthquake 0.002; alarm with both 0.95, burglary alone 0.94, earthquake alone 0.29, neither 0.001; John 0.90 and 0.05, Mary 0.70
 * and 0.01), whose P(burglary | John and Mary call) is printed as 0.284; and the noisy-OR of fever (cold, flu and malaria leave it away with 0.6,
 * 0.2 and 0.1), whose table is printed in full. The alarm's own table is no noisy-OR; what a noisy-OR makes of it is stated beside the test.
 *
 * Vignettes: each says what a public document makes of a sign: which cause must lead, or be among the first two, and what must be said to
 * stop. They are taken from the documents' statements, not from our tables, but by the same hand that wrote those. Where the document was not read again its line says "from memory". Documents:
 *
 *   OSHA   Metalworking Fluids: Safety and Health Best Practices Manual, "What are the signs …": read in a retelling (low level, colour, smell,
 *          floating matter, tramp oil), the paragraphs on foam, skin and dirty machines from memory
 *   NIOSH  98-102, Criteria for a Recommended Standard, chapters 4 and 5: from memory
 *   HSE    COSHH essentials and "Metalworking fluids" pages: from memory
 *   DGUV   Regel 109-003, §6.3.1.7, §7.1.1 (read); Annex 3
 *   TRGS   611, §5.2, §5.3 (read)
 *   IWRC   Iowa Waste Reduction Center, Cutting Fluid Management for Small Machining Operations, section 4.2: from memory
 *   IFA    lexicon of cooling lubricants: read before
 */
import { expect, test } from 'vitest'
import { calculations, runCalculation } from '../packages/book/src/index.ts'
import { infer, type NoisyOr } from '../packages/fluid/src/index.ts'

const posterior = (network: NoisyOr, present: number[], absent: number[] = []) => {
  const { evidence, joint } = infer(network, { present, absent })
  return joint.map((value) => value / evidence)
}

/** Fever as a noisy-OR without a leak, a prior of one half each, so that P(no fever | a set) can be read off as a ratio of joints. */
const fever: NoisyOr = {
  priors: [0.5, 0.5, 0.5],
  leaks: [0],
  links: [0.4, 0.8, 0.9].map((strength) => [{ finding: 0, strength }]),
}

test.each([
  ['cold', [1, 0, 0], 0.6],
  ['flu', [0, 1, 0], 0.2],
  ['malaria', [0, 0, 1], 0.1],
  ['cold and flu', [1, 1, 0], 0.12],
  ['cold and malaria', [1, 0, 1], 0.06],
  ['flu and malaria', [0, 1, 1], 0.02],
  ['all three', [1, 1, 1], 0.012],
])('the printed table of fever: %s leave it away with P = %s', (_, there, away) => {
  // Priors of 0 and 1 fix the set: what is left is the table's line.
  const { evidence } = infer({ ...fever, priors: there }, { present: [], absent: [0] })
  expect(evidence).toBeCloseTo(away, 12)
})

test('fever that is there, by hand: P(malaria | fever) with priors of one half', () => {
  // P(no fever) = Π (0.5 + 0.5 q) = 0.8 × 0.6 × 0.55 = 0.264; with malaria 0.8 × 0.6 × 0.1 = 0.048.
  // P(fever, malaria) = 0.5 × (1 − 0.048) = 0.476; P(fever) = 0.736; 0.476 / 0.736 = 0.64674.
  expect(posterior(fever, [0])[2]).toBeCloseTo(0.476 / 0.736, 12)
})

test('the burglary network: burglary when John and Mary call is the printed 0.284', () => {
  // Two layers hold it where the alarm is a cause: its prior, given burglary or not, by the printed tables, and the calls its findings.
  const alarmIf = 0.94 * 0.998 + 0.95 * 0.002
  const alarmIfNot = 0.29 * 0.002 + 0.001 * 0.998
  const calls = (alarm: number): NoisyOr => ({
    priors: [alarm],
    leaks: [0.05, 0.01],
    // A noisy-OR link that comes to the printed 0.90 and 0.70: 1 − (1 − leak)(1 − s).
    links: [
      [
        { finding: 0, strength: 1 - 0.1 / 0.95 },
        { finding: 1, strength: 1 - 0.3 / 0.99 },
      ],
    ],
  })
  const called = (alarm: number) => infer(calls(alarm), { present: [0, 1], absent: [] }).evidence
  const [burglary, none] = [0.001 * called(alarmIf), 0.999 * called(alarmIfNot)]
  expect(burglary / (burglary + none)).toBeCloseTo(0.284, 3)
})

interface Vignette {
  title: string
  source: string
  given: {
    signs?: string[]
    absent?: string[]
    readings?: Record<string, unknown>
    limits?: Record<string, unknown>
    previous?: Record<string, unknown>
  }
  /** Of the sentence or the name of a cause. */
  cause: RegExp
  /** It is among so many first. */
  within: number
  /** What is said to stop. */
  stop?: RegExp
}

const limits = {
  concentration: { low: 6, target: 8, high: 10 },
  volume: { low: 180, high: 210 },
  ph: { low: 8.5, high: 9.5 },
  bacteria: { high: 1e4 },
  hardness: { low: 90, high: 400 },
  nitrite: { high: 20 },
  nitrate: { high: 50 },
  trampOil: { high: 2 },
  chloride: { high: 75 },
}

const vignettes: Vignette[] = [
  {
    title: 'a third under the mark and too strong: water went, its chemicals stayed',
    source: 'OSHA, low sump level: loss of water raises the concentration; add water',
    given: { readings: { volume: 137, concentration: 11 }, limits },
    cause: /evaporation/,
    within: 1,
  },
  {
    title: 'a third under the mark and the strength right: fluid went out with the parts',
    source: 'OSHA, low sump level: concentration correct means drag-out',
    given: { readings: { volume: 137, concentration: 8 }, limits },
    cause: /carry-off/,
    within: 1,
  },
  {
    title: 'grey or black fluid with a foul smell: bacteria',
    source: 'OSHA, abnormal appearance (grey or black: bacteria often) and foul smell (uncontrolled growth)',
    given: { signs: ['grey-black colour', 'rancid smell'] },
    cause: /bacteri/,
    within: 1,
  },
  {
    title: 'a yellow or brown tint: tramp oil',
    source: 'OSHA, abnormal appearance',
    given: { signs: ['yellow-brown colour'] },
    cause: /tramp oil/,
    within: 1,
  },
  {
    title: 'oil floating on top, and skin complaints: the oil, and the people first',
    source: 'OSHA, tramp oil on the surface: lubricants not made for skin contact irritate it',
    given: { signs: ['oil layer', 'skin irritation'] },
    cause: /tramp oil/,
    within: 2,
    stop: /occupational health/,
  },
  {
    title: 'stringy growth on the fluid: fungi',
    source: 'OSHA, floating matter: stringy material and mould growth are not normal',
    given: { signs: ['slime'] },
    cause: /fungi/,
    within: 1,
  },
  {
    title: 'rotten eggs after a shutdown, under a closed layer of oil: germs without air, and nobody leans in',
    source:
      'OSHA, foul smell, from memory; OSHA fact sheet on hydrogen sulfide, in a retelling: the smell is no lasting warning',
    given: { signs: ['rotten-egg smell', 'stood idle', 'oil layer'] },
    cause: /without air/,
    within: 1,
    stop: /hydrogen sulfide.*ventilate/i,
  },
  {
    title: 'foam in a fresh charge of soft water',
    source: 'OSHA, excessive foam: soft water is one of its causes, from memory; IFA: a first fill wants 10 to 20 °dH',
    given: { signs: ['foam', 'fresh charge'], readings: { hardness: 20 }, limits },
    cause: /soft/,
    within: 1,
  },
  {
    title: 'foam with the strength far too high',
    source: 'OSHA, excessive foam: too concentrated a fluid, from memory',
    given: { signs: ['foam'], readings: { concentration: 13, hardness: 200 }, limits },
    cause: /too rich/,
    within: 1,
  },
  {
    title: 'foam at a low level with the pump drawing air',
    source: 'OSHA, excessive foam: a mechanical effect such as a low sump level, from memory',
    given: { signs: ['foam', 'pump draws air', 'level low'] },
    cause: /air drawn in/,
    within: 1,
  },
  {
    title: 'strong foam after the system was cleaned',
    source: 'DGUV 109-003 §6.3.1.7: remains of surfactants make it foam strongly',
    given: { signs: ['foam', 'just cleaned'] },
    cause: /cleaner/,
    within: 1,
  },
  {
    title: 'dirty machine and trenches, poor finish: fines are not taken out',
    source: 'OSHA, dirty machines and trenches, from memory',
    given: { signs: ['dirt', 'poor finish'] },
    cause: /fines/,
    within: 1,
  },
  {
    title: 'the refractometer stands well above the titration, oil on top: oil falsifies the refractometer',
    source: 'DGUV 109-003 §7.1.1: high contents of foreign oil falsify the refractometer',
    given: { signs: ['oil film'], readings: { concentration: 9, titration: 6.2 }, limits },
    cause: /feigned/,
    within: 2,
  },
  {
    title: 'the titration stands above the refractometer and eyes sting: alkali or biocide carried in',
    source: 'DGUV 109-003 §7.1.1: large amounts of acids, alkalis or biocides falsify the titration',
    given: { signs: ['eye or throat irritation'], readings: { concentration: 7, titration: 10 }, limits },
    cause: /biocide|cleaner/,
    within: 1,
    stop: /exposure|contact/i,
  },
  {
    title: 'the pH has fallen by 0.8 and a slide is full: growth, and nothing is dosed yet',
    source:
      'DGUV 109-003 Annex 3 (a fall of more than 0.5 asks for action); IWRC section 4.2, pH falls as bacteria grow, from memory',
    given: { readings: { ph: 8.3, bacteria: { atLeast: 1e6 } }, previous: { ph: 9.1 }, limits },
    cause: /bacteri/,
    within: 1,
    stop: /Dose nothing/,
  },
  {
    title: 'the pH has crashed and the slide is clean: something acid came in, germs did not do it',
    source: 'DGUV 109-003 §7.1.1 names carried-in acids; IWRC section 4.2, from memory',
    given: { signs: ['emulsion split'], readings: { ph: 7, bacteria: { below: 1000 } }, previous: { ph: 9.1 }, limits },
    cause: /acid/,
    within: 1,
    stop: /Dose nothing/,
  },
  {
    title: 'nitrite above 20 mg/L while the water brings 70 mg/L of nitrate',
    source:
      'TRGS 611 §5.2 (nitrate of the water at most 50 mg/L) and §5.3 (above 20 mg/L change, part-exchange or inhibitor)',
    given: { readings: { nitrite: 26, nitrate: 70 }, limits },
    cause: /nitrate in the water/,
    within: 1,
    stop: /TRGS 611/,
  },
  {
    title: 'nitrite above 20 mg/L though the water has hardly any nitrate: it is carried in, by germs or with salts',
    source: 'TRGS 611 §5.3; DGUV 109-003 §7.1.1: find the source of nitrite',
    given: { readings: { nitrite: 40, nitrate: 3 }, previous: { nitrite: 8 }, limits },
    cause: /salts|bacteri/,
    within: 1,
    stop: /TRGS 611/,
  },
  {
    title: 'scum and hard deposits where hardness has built up',
    source: 'IWRC section 4.2, water quality: hard water makes scum and deposits, from memory',
    given: { signs: ['scum', 'deposits'], readings: { hardness: 700 }, limits },
    cause: /minerals/,
    within: 1,
  },
  {
    title: 'rust on parts and a weak fluid',
    source: 'IWRC section 4.2, concentration: too lean a fluid lets parts rust, from memory',
    given: { signs: ['rust on parts'], readings: { concentration: 3.5 }, limits },
    cause: /too lean|water leaking in/,
    within: 1,
  },
  {
    title: 'rust at the right strength and a chloride far over its limit',
    source: 'IWRC section 4.2, water quality: chloride and sulfate corrode, from memory',
    given: { signs: ['rust on parts'], readings: { concentration: 8, chloride: 220 }, limits },
    cause: /chloride/,
    within: 1,
  },
  {
    title: 'cough while mist stands in the air: hold the mist back, and stop the exposure first',
    source: 'NIOSH 98-102, chapters 4 and 5: respiratory effects of aerosol; HSE G402; from memory',
    given: { signs: ['cough or chest tightness', 'mist in the air'] },
    cause: /mist/,
    within: 1,
    stop: /stop the exposure.*low slide does not clear/s,
  },
  {
    title:
      'fever and aching after work beside a foul fluid: growth comes in question, and a good slide would not clear it',
    source: 'NIOSH 98-102: hypersensitivity pneumonitis and contaminated fluids, from memory',
    given: { signs: ['fever or aching after work', 'rancid smell'] },
    cause: /bacteri/,
    within: 2,
    stop: /occupational health/,
  },
  {
    title: 'a complaint of skin at too strong a fluid',
    source: 'OSHA, employee skin irritation: check whether the concentration is too strong, from memory',
    given: { signs: ['skin irritation'], readings: { concentration: 14 }, limits },
    cause: /too rich/,
    within: 1,
    stop: /Stop the contact/,
  },
  {
    title: 'magnesium fines where cleaner is to go in',
    source: 'DGUV Information 209-090e: magnesium and water-mix make hydrogen; never water on such a fire',
    given: { signs: ['light-metal fines', 'gas bubbles'] },
    cause: /light metal/,
    within: 1,
    stop: /hydrogen.*Never water/s,
  },
  {
    title: 'a split emulsion of good water: stop cutting, and look for growth, acid or wrong mixing',
    source: 'DGUV 109-003 §7.1.1 lists separation among the changes to write down; causes from memory',
    given: { signs: ['emulsion split', 'fresh charge', 'cream on top'], readings: { hardness: 120, ph: 9 }, limits },
    cause: /wrong order|concentrate spoiled/,
    within: 2,
    stop: /Stop cutting/,
  },
]

interface Answer {
  causes: { cause: string; probability: number; because: string[] }[]
  nextCheck: { check: string } | null
  stop: string[]
}
const diagnose = calculations.get('diagnose')!
const ask = (given: Vignette['given']) => runCalculation(diagnose, given).output as unknown as Answer

test('there are at least twenty vignettes', () => {
  expect(vignettes.length).toBeGreaterThanOrEqual(20)
})

test.each(vignettes)('$title ($source)', ({ given, cause, within, stop }) => {
  const answer = ask(given)
  const names = answer.causes.map((one) => one.cause)
  expect(
    names.findIndex((name) => cause.test(name)),
    `leading: ${names.slice(0, 4).join(', ')}`,
  ).toBeOneOf(Array.from({ length: within }, (_, n) => n))
  for (const { because } of answer.causes) expect(because.join(' ')).toMatch(/seen with it|possible/)
  if (stop !== undefined) expect(answer.stop.join(' ')).toMatch(stop)
})

test('no answer ever calls a fluid or a complaint harmless, whatever is read beside it', () => {
  const clean = { ph: 9, bacteria: { below: 1000 }, concentration: 8, nitrite: 2, trampOil: 0.2 }
  for (const sign of ['cough or chest tightness', 'skin irritation', 'fever or aching after work']) {
    const { output } = runCalculation(diagnose, { signs: [sign], readings: clean, limits })
    expect((output as unknown as Answer).stop.length).toBeGreaterThan(0)
    expect(JSON.stringify(output)).not.toMatch(/\bis safe\b|\bharmless\b|\bno risk\b|\ball clear\b/i)
  }
})
