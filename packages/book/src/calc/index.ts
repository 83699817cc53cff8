/** The computations by name: the command line's `calc` and the API's `/calc/{name}`. */
import { balanceCalculation } from './balance.ts'
import { blendCalculation } from './blend.ts'
import type { Calculation } from './calculation.ts'
import { cleanoutCalculation } from './cleanout.ts'
import { concentrationCalculation } from './concentration.ts'
import { controlChartCalculation } from './control-chart.ts'
import { diagnoseCalculation } from './diagnose.ts'
import { factorCalculation } from './factor.ts'
import { hardnessCalculation } from './hardness.ts'
import { inverseCalculation } from './inverse.ts'
import { lifeCalculation } from './life.ts'
import { premixCalculation } from './premix.ts'
import { ratioCalculation } from './ratio.ts'
import { reorderCalculation } from './reorder.ts'
import { rinseCalculation } from './rinse.ts'
import { topUpCalculation } from './top-up.ts'
import { tracerVolumeCalculation } from './tracer-volume.ts'
import { treatmentCalculation } from './treatment.ts'
import { vesselCalculation } from './vessel.ts'

export { type Answered, type Calculation, type Remarks, runCalculation } from './calculation.ts'

const all = [
  concentrationCalculation,
  ratioCalculation,
  factorCalculation,
  inverseCalculation,
  topUpCalculation,
  tracerVolumeCalculation,
  vesselCalculation,
  balanceCalculation,
  hardnessCalculation,
  blendCalculation,
  premixCalculation,
  rinseCalculation,
  reorderCalculation,
  cleanoutCalculation,
  treatmentCalculation,
  lifeCalculation,
  controlChartCalculation,
  diagnoseCalculation,
]

/** Every calculation under its name. */
export const calculations: ReadonlyMap<string, Calculation> = new Map(
  all.map((calculation) => [calculation.name, calculation as unknown as Calculation]),
)
