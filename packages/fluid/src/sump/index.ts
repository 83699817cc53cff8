export { balance, type SteadySump, type SumpBalance } from './balance.ts'
export { type TracerStep, type TracerVolume, tracerVolume } from './tracer-volume.ts'
