export { type Caution, type CautionId, type CautionTag, cautions, sayCautions } from './cautions.ts'
