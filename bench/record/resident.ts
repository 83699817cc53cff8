import { existsSync, readFileSync } from 'node:fs'

/** Resident memory of a process in MB, as the system counts it; NaN where it does not say. */
export function residentMB(pid: number): number {
  const path = `/proc/${pid}/status`
  const [, kilobytes] = existsSync(path) ? (/VmRSS:\s+(\d+) kB/.exec(readFileSync(path, 'utf8')) ?? []) : []
  return Math.round(Number(kilobytes) / 1024)
}
