import { openChromium } from './chromium.ts'

/** A browser that a package brings is unpacked at its first start: once, before two tests start it side by side. */
export default async function setup(): Promise<void> {
  await (await openChromium()).close()
}
