import { openDeviceStore } from './device-store.ts'

/** This device's own store: opened by who first needs it. */
export const thisStore = openDeviceStore()
