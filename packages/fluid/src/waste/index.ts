export { codeCautions, plainCode, type WasteChosen, type WasteCode, type WasteKind, wasteCodes } from './codes.ts'
export {
  isBeyond,
  type PickupBeyond,
  type StorageClock,
  type WasteEvent,
  type WasteNow,
  type WasteVessel,
  wasteNow,
} from './container.ts'
export { litresOfMass, massOfLitres } from './mass.ts'
export { type Reconciled, reconciled, type WasteSums } from './reconcile.ts'
export { type TermProposal, termProposals } from './terms.ts'
