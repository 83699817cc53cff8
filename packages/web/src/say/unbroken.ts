import { options } from 'preact'

/** Units as figures on a page carry them, in all languages; "in" is left out, as the English word that it is as well. */
const units =
  'L|mL|gal|m³|%|‰|°Brix|°dH|°fH|ppm|mg/L|mg/m³|mmol/L|µS/cm|CFU/mL|KBE/mL|UFC/mL|°C|°F|mm|cm|m|kg|g|lb|t|h|min|s|kWh|MB|kB'
const parted = new RegExp(`(\\d) (?=(?:${units})(?![\\p{L}\\d]))`, 'gu')

/**
 * A text whose figures stay on a line with their units: "38 L", "7,4 %".
 *
 * @example unbroken('Add 38 L at 7.5 %') // 'Add 38\u00a0L at 7.5\u00a0%'
 */
export const unbroken = (text: string): string => text.replace(parted, '$1\u00a0')

/**
 * From now on no page of the app breaks a line between a figure and its unit, whoever made the sentence. Done where texts become nodes,
 * so that sentences themselves keep their plain spaces: the API, tables and what is copied into a field go by those.
 */
export function keepFiguresWhole(): void {
  const before = options.vnode
  options.vnode = (vnode) => {
    // Preact makes a node without a type of every text, with the text for its props.
    const text: unknown = vnode.props
    if (typeof text === 'string') (vnode as { props: unknown }).props = unbroken(text)
    before?.(vnode)
  }
}
