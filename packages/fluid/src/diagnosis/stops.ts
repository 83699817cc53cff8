import { type CautionId, sayCautions } from '../cautions/cautions.ts'

/** What must be done at once, before anybody looks for causes. */
export interface Stop {
  /** What it is about, in a word or two. */
  id: string
  /** Any of these findings calls for it. */
  when: readonly string[]
  /** What to do at once, a few sentences. */
  text: string
  source: string
  /** Whether somebody must answer for it later: it stays on the list of the day until then. */
  followUp: boolean
  /** Whether nobody goes near it for a test before this is dealt with. */
  keepAway?: true
}

/** What to do, with the cautions that belong to it. */
const at = (once: string, ...cautions: CautionId[]) => [once, ...sayCautions(cautions)].join(' ')

/** In the order in which they are said: what can kill comes first. */
export const stops: readonly Stop[] = [
  {
    id: 'hydrogen sulfide',
    when: ['rotten-egg smell'],
    text: at('Keep back: the smell fades while the danger stays.', 'rottenEggGas', 'acidOrBleach'),
    source: 'OSHA fact sheet on hydrogen sulfide, in a retelling; the rest from memory',
    followUp: true,
    keepAway: true,
  },
  {
    id: 'hydrogen',
    when: ['light-metal fines', 'gas bubbles'],
    text: at('No alkaline cleaner, no flame, no spark.', 'alkalineOnFines', 'magnesiumFire'),
    source: 'DGUV Information 209-090e; cleaner on light-metal fines from memory',
    followUp: true,
    keepAway: true,
  },
  {
    id: 'breathing',
    when: ['cough or chest tightness', 'fever or aching after work'],
    text: at('Whoever is affected leaves the mist now.', 'coughStops', 'namesStayOut'),
    source: 'HSE G402, NIOSH 98-102, from memory',
    followUp: true,
  },
  {
    id: 'skin and eyes',
    when: ['skin irritation', 'eye or throat irritation'],
    text: at(
      'Stop the contact of whoever is affected, rinse, and have them seen by occupational health. A good reading does not clear a fluid.',
      'namesStayOut',
    ),
    source: 'HSE G403, from memory',
    followUp: true,
  },
  {
    id: 'solvent',
    when: ['solvent smell'],
    text: 'Stop the machine, keep sparks away and ventilate: solvent vapour can burn. Start again only once its source is found.',
    source: 'common practice, no source',
    followUp: true,
  },
  {
    id: 'ammonia',
    when: ['ammonia smell'],
    text: at('Ventilate and add nothing to it.', 'acidOrBleach'),
    source: 'common practice, no source',
    followUp: true,
  },
  {
    id: 'split',
    when: ['emulsion split'],
    text: 'Stop cutting with a split emulsion and pour nothing into it: neither its strength nor its rust protection can be relied on, and the refractometer does not read it truly. Take a sample for the supplier.',
    source: 'common practice, no source',
    followUp: true,
  },
  {
    id: 'nitrite',
    when: ['nitrite high'],
    text: at(
      'Nitrite is above its limit: change or part-exchange the fluid, or agree an inhibitor with the supplier (TRGS 611).',
      'nitriteWithAmines',
    ),
    source: 'TRGS 611, §5.3',
    followUp: false,
  },
  {
    id: 'no dose',
    when: ['falling pH', 'low pH'],
    text: at('Dose nothing on this pH, neither booster nor biocide.', 'phCauseFirst'),
    source: 'common practice, no source',
    followUp: false,
  },
  {
    id: 'water in',
    when: ['water dripping in', 'high and weak', 'level high'],
    text: 'Stop what runs in, and keep the sump from running over into a drain.',
    source: 'common practice, no source',
    followUp: false,
  },
]

/** What must be done at once for these findings, most dangerous first. */
export const stopsFor = (present: readonly string[]): Stop[] =>
  stops.filter(({ when }) => when.some((finding) => present.includes(finding)))

/** Whether a sign stays on the list of the day until somebody has answered for it. */
export const needsFollowUp = (finding: string): boolean =>
  stops.some(({ when, followUp }) => followUp && when.includes(finding))
