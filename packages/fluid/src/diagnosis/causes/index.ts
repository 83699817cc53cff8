import type { Cause } from '../network.ts'
import { balanceCauses } from './balance.ts'
import { chemistryCauses } from './chemistry.ts'
import { growthCauses } from './growth.ts'
import { machineCauses } from './machine.ts'
import { oilCauses } from './oil.ts'
import { waterCauses } from './water.ts'

/** Every cause that the diagnosis knows, one file a family. */
export const causes: readonly Cause[] = [
  ...balanceCauses,
  ...waterCauses,
  ...growthCauses,
  ...oilCauses,
  ...machineCauses,
  ...chemistryCauses,
]
