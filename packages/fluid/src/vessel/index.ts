export {
  type DipLevel,
  type DipTable,
  type DipVolume,
  levelAt,
  type Outside,
  requireDipTable,
  volumeAt,
} from './dip-table.ts'
export { type MarkedContainer, type MarkingPour, markedByPours, marksEvery } from './marks.ts'
export { type Shape, shapeHeight, shapeVolume } from './shapes.ts'
export {
  type Vessel,
  type VesselAtLevel,
  vesselAt,
  vesselLevel,
  vesselRange,
  vesselTable,
  vesselVolume,
} from './vessel.ts'
