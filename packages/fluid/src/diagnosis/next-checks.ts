/** Something that can be measured or looked at, and what it would tell. */
export interface NextCheck {
  id: string
  /** What to do, one sentence without its stop. */
  does: string
  /** How long until it is known. */
  takes: string
  findings: readonly string[]
}

/** What can be tested next, in the order of trouble it makes: at equal worth the first is named. */
export const nextChecks: readonly NextCheck[] = [
  { id: 'level', does: 'Read the level, pumps stopped', takes: 'a minute', findings: ['level low', 'level high'] },
  { id: 'concentration', does: 'Read the strength by refractometer', takes: 'a minute', findings: ['weak', 'rich'] },
  { id: 'ph', does: 'Read the pH', takes: 'a minute', findings: ['low pH', 'high pH'] },
  { id: 'hardness', does: 'Read the hardness by strip', takes: 'a minute', findings: ['hard', 'soft'] },
  { id: 'nitrite', does: 'Read the nitrite by strip', takes: 'a minute', findings: ['nitrite high'] },
  {
    id: 'nitrate',
    does: 'Read the nitrate of the water by strip, or ask the waterworks',
    takes: 'a minute',
    findings: ['nitrate high'],
  },
  { id: 'chloride', does: 'Read the chloride by strip', takes: 'a minute', findings: ['chloride high'] },
  { id: 'conductivity', does: 'Read the conductivity', takes: 'a minute', findings: ['conductivity high'] },
  {
    id: 'temperature',
    does: 'Read the temperature of the running fluid',
    takes: 'a minute',
    findings: ['temperature high'],
  },
  { id: 'dissolvedOxygen', does: 'Read the dissolved oxygen', takes: 'some minutes', findings: ['oxygen low'] },
  {
    id: 'titration',
    does: 'Take the strength by titration as well',
    takes: 'some minutes',
    findings: ['refractometer above titration', 'titration above refractometer'],
  },
  {
    id: 'filter and jets',
    does: 'Look at filter, strainer and jets',
    takes: 'some minutes',
    findings: ['filter blocked', 'weak jet'],
  },
  {
    id: 'leaks',
    does: 'Look for water and oil that run in',
    takes: 'some minutes',
    findings: ['water dripping in', 'oil leak on the machine'],
  },
  {
    id: 'under covers',
    does: 'Look under covers and into the return for slime',
    takes: 'some minutes',
    findings: ['slime'],
  },
  {
    id: 'sample glass',
    does: 'Let a sample stand in a glass overnight and look at it',
    takes: 'a day',
    findings: ['emulsion split', 'oil layer', 'cream on top'],
  },
  {
    id: 'trampOil',
    does: 'Measure the tramp oil in a glass that has stood',
    takes: 'a day',
    findings: ['tramp oil high'],
  },
  { id: 'bacteria', does: 'Read a dip slide', takes: 'one to three days', findings: ['bacteria high'] },
  { id: 'fungi', does: 'Read a slide for fungi', takes: 'three days and more', findings: ['fungi high'] },
  { id: 'sulfate', does: 'Have the sulfate measured', takes: 'some days', findings: ['sulfate high'] },
]
