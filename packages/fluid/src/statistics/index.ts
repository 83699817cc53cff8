export { median } from './median.ts'
export { monotoneFit, type Weighted } from './monotone.ts'
export { normalAbove, normalQuantile } from './normal.ts'
export { type StudentPoint, type StudentShare, studentBelow, studentQuantile } from './student.ts'
