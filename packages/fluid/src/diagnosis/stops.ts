import { type CautionId, sayCautions } from '../cautions/cautions.ts'
import { say } from '../words/index.ts'

/** What must be done at once, before anybody looks for causes. */
export interface Stop {
  /** What it is about, in a word or two. */
  id: string
  /** Any of these findings calls for it. */
  when: readonly string[]
  /** What to do at once, a sentence or a few. */
  once: string
  /** What to mind with it. */
  cautions: readonly CautionId[]
  source: string
  /** Whether somebody must answer for it later: it stays on the list of the day until then. */
  followUp: boolean
  /** Whether nobody goes near it for a test before this is dealt with. */
  keepAway?: true
}

/** In the order in which they are said: what can kill comes first. */
export const stops: readonly Stop[] = [
  {
    id: 'hydrogen sulfide',
    when: ['rotten-egg smell'],
    once: 'Keep back: the smell fades while the danger stays.',
    cautions: ['rottenEggGas', 'acidOrBleach'],
    source: 'OSHA fact sheet on hydrogen sulfide, in a retelling; the rest from memory',
    followUp: true,
    keepAway: true,
  },
  {
    id: 'hydrogen',
    when: ['light-metal fines', 'gas bubbles'],
    once: 'No alkaline cleaner, no flame, no spark.',
    cautions: ['alkalineOnFines', 'magnesiumFire'],
    source: 'DGUV Information 209-090e; cleaner on light-metal fines from memory',
    followUp: true,
    keepAway: true,
  },
  {
    id: 'breathing',
    when: ['cough or chest tightness', 'fever or aching after work'],
    once: 'Whoever is affected leaves the mist now.',
    cautions: ['coughStops', 'namesStayOut'],
    source: 'HSE G402, NIOSH 98-102, from memory',
    followUp: true,
  },
  {
    id: 'skin and eyes',
    when: ['skin irritation', 'eye or throat irritation'],
    once: 'Stop the contact of whoever is affected, rinse, and have them seen by occupational health. A good reading does not clear a fluid.',
    cautions: ['namesStayOut'],
    source: 'HSE G403, from memory',
    followUp: true,
  },
  {
    id: 'solvent',
    when: ['solvent smell'],
    once: 'Stop the machine, keep sparks away and ventilate: solvent vapour can burn. Start again only once its source is found.',
    cautions: [],
    source: 'common practice, no source',
    followUp: true,
  },
  {
    id: 'ammonia',
    when: ['ammonia smell'],
    once: 'Ventilate and add nothing to it.',
    cautions: ['acidOrBleach'],
    source: 'common practice, no source',
    followUp: true,
  },
  {
    id: 'split',
    when: ['emulsion split'],
    once: 'Stop cutting with a split emulsion and pour nothing into it: neither its strength nor its rust protection can be relied on, and the refractometer does not read it truly. Take a sample for the supplier.',
    cautions: [],
    source: 'common practice, no source',
    followUp: true,
  },
  {
    id: 'nitrite',
    when: ['nitrite high'],
    once: 'Nitrite is above its limit: change or part-exchange the fluid, or agree an inhibitor with the supplier (TRGS 611).',
    cautions: ['nitriteWithAmines'],
    source: 'TRGS 611, §5.3',
    followUp: false,
  },
  {
    id: 'no dose',
    when: ['falling pH', 'low pH'],
    once: 'Dose nothing on this pH, neither booster nor biocide.',
    cautions: ['phCauseFirst'],
    source: 'common practice, no source',
    followUp: false,
  },
  {
    id: 'water in',
    when: ['water dripping in', 'high and weak', 'level high'],
    once: 'Stop what runs in, and keep the sump from running over into a drain.',
    cautions: [],
    source: 'common practice, no source',
    followUp: false,
  },
]

/** What must be done at once for these findings, most dangerous first. */
export const stopsFor = (present: readonly string[]): Stop[] =>
  stops.filter(({ when }) => when.some((finding) => present.includes(finding)))

/** What to do at once, with the cautions that belong to it. */
export const sayStop = ({ once, cautions }: Stop): string => [say(once), ...sayCautions(cautions)].join(' ')

/** Whether a sign stays on the list of the day until somebody has answered for it. */
export const needsFollowUp = (finding: string): boolean =>
  stops.some(({ when, followUp }) => followUp && when.includes(finding))
