/** Draws the app's icons from its mark, by hand where the mark changes: `node packages/web/browser/draw-icons.ts`. */
import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { openChromium } from './chromium.ts'

const publicFolder = new URL('../public/', import.meta.url)
const mark = readFileSync(new URL('mark.svg', publicFolder), 'utf8')
const paper = '#f7f4ec'

/** Home screens that cut an icon to their own shape leave its middle four fifths; some fill what is left clear with black. */
const icons = [
  { name: 'icon-192', size: 192, share: 1 },
  { name: 'icon-512', size: 512, share: 1 },
  { name: 'icon-maskable-512', size: 512, share: 0.7 },
  { name: 'apple-touch-icon', size: 180, share: 0.86 },
]

const browser = await openChromium()
try {
  for (const { name, size, share } of icons) {
    const page = await browser.newPage({ viewport: { width: size, height: size } })
    const side = Math.round(size * share)
    const ground = share === 1 ? 'transparent' : paper
    await page.setContent(
      `<style>body{margin:0;height:100vh;display:grid;place-items:center;background:${ground}}svg{width:${side}px;height:${side}px}</style>${mark}`,
    )
    const path = fileURLToPath(new URL(`${name}.png`, publicFolder))
    await page.screenshot({ path, omitBackground: share === 1 })
    await page.close()
  }
} finally {
  await browser.close()
}
