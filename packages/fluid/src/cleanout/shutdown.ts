import type { CautionId } from '../cautions/index.ts'

/** For how long machines stand, and how they are started again. */
export const shutdownKinds = ['weekend', 'holidays', 'mothballed', 'restart'] as const
export type ShutdownKind = (typeof shutdownKinds)[number]

export interface ShutdownStep {
  id: string
  /** What to do, as a heading. */
  title: string
  /** With figures of its own in braces; both are said by `sayShutdownStep`. */
  text: string
  cautions: CautionId[]
  signs: 'operator' | 'keeper'
  asks: ('ph' | 'brix' | 'look' | 'smell' | 'bacteria' | 'oil')[]
}

/**
 * The steps before a machine stands, and before it runs again. Still fluid under an oil layer is where growth begins, so oil and chips come
 * off, it is moved and aired, and what stands longer than it keeps is taken out.
 *
 * Source: common practice, no source; cautions have their own.
 */
export function shutdownSheet(kind: ShutdownKind): ShutdownStep[] {
  return sheets[kind]
}

const chips = step(
  'chips',
  'Chips out',
  'Run the conveyor empty, clear chips and mud from the machine and from the basket: wet fines feed growth and eat strength.',
  {
    cautions: ['handsIn'],
  },
)
const skim = step('skim', 'Skim', 'Take the oil off the top: under it the fluid gets no air.', { asks: ['oil'] })
const move = step(
  'move',
  'Keep it moving',
  'Have the pumps or an air line move the fluid for some minutes several times a day, where the machine’s manual lets it run unattended. Otherwise leave the covers open so that air gets to it.',
)
const keepReadings = step(
  'readings',
  'Read it before it stands',
  'Strength, pH, look and smell, so that the restart has something to compare with. Bring a lean sump to the upper half of its band first.',
  { asks: ['brix', 'ph', 'look', 'smell'] },
)

const sheets: Readonly<Record<ShutdownKind, ShutdownStep[]>> = {
  weekend: [
    chips,
    skim,
    step(
      'level',
      'Level and strength',
      'Top up now rather than on Monday: a low, warm sump suffers more. Read the strength.',
      {
        asks: ['brix'],
      },
    ),
    move,
    step(
      'sample',
      'Set a sample aside',
      'A glass of it left standing over the weekend shows by Monday what the sump will do: separation, smell, growth.',
    ),
  ],
  holidays: [
    keepReadings,
    step(
      'slide',
      'Dip slide',
      'A slide now says whether the fluid keeps until the end of the holidays. With heavy growth change it before, not after.',
      {
        asks: ['bacteria'],
        cautions: ['grownSlide'],
      },
    ),
    chips,
    skim,
    step(
      'filters',
      'Filters and baskets',
      'Clean or change what holds wet chips and sludge; leave nothing wet in them.',
      { cautions: ['handsIn'] },
    ),
    move,
    step(
      'who',
      'Name who looks',
      'Somebody looks and smells once a week while the shop is shut, and knows whom to call.',
      { signs: 'keeper' },
    ),
    step(
      'idle',
      'Write that it stands',
      'From when to when: evaporation and carry-off are then not reckoned for these days.',
      { signs: 'keeper' },
    ),
  ],
  mothballed: [
    keepReadings,
    step(
      'out',
      'Fluid out',
      'What stands for more than some weeks does not keep. Drain and clean it out by the sheet of a cleanout, without the fresh charge.',
      {
        cautions: ['handsIn', 'drawnOffIsWaste'],
      },
    ),
    step(
      'dry',
      'Leave it dry',
      'Open low points, blow out lines and hoses, wipe the sump, dry the filter housings. Covers stay open.',
      {
        cautions: ['handsIn'],
      },
    ),
    step(
      'protect',
      'Protect it',
      'Corrosion protection of ways, spindle and sump as the machine’s manual says, with one that the coming fluid bears.',
    ),
    step('label', 'Label it', 'On the machine: empty, since when, what was in it, what must be done before it runs.', {
      signs: 'keeper',
    }),
    step('idle', 'Write that it stands', 'From when on: the book then asks for no readings of it.', {
      signs: 'keeper',
    }),
  ],
  restart: [
    step('smell', 'Look and smell first', 'Before anything moves: covers open, doors open, from a step away.', {
      asks: ['look', 'smell'],
      cautions: ['rottenEggGas', 'acidOrBleach'],
    }),
    step('skim', 'Skim', 'Take off what has risen while it stood, before the pumps stir it in.', { asks: ['oil'] }),
    step('level', 'Level', 'Bring it above the pumps’ suction with water or weak mix, by its recipe.', {
      cautions: ['pumpsDrawAir'],
    }),
    step(
      'run',
      'Run it',
      'Circulate for half an hour with the doors shut and extraction on, through hoses and branches too.',
      { cautions: ['mist', 'skin'] },
    ),
    step(
      'readings',
      'Read it',
      'Strength, pH; a pH that has fallen by more than {fall} since before means growth or something carried in: find out first.',
      {
        asks: ['brix', 'ph'],
        cautions: ['phCauseFirst'],
      },
    ),
    step(
      'slide',
      'Dip slide',
      'Read it before the machine is given to people for a full shift. Foul, split or full of growth: change and clean out, no dose.',
      {
        asks: ['bacteria'],
        signs: 'keeper',
        cautions: ['biocideDoesNotRepair', 'grownSlide', 'coughStops'],
      },
    ),
  ],
}

function step(
  id: string,
  title: string,
  text: string,
  { cautions = [], signs = 'operator', asks = [] }: Partial<Pick<ShutdownStep, 'cautions' | 'signs' | 'asks'>> = {},
): ShutdownStep {
  return { id, title, text, cautions, signs, asks }
}
