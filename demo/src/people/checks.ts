import { mixer, refractometer } from '../shop/equipment.ts'
import { fluidOf } from '../shop/fluids.ts'
import { waterOf, waters } from '../shop/waters.ts'
import { brixOf } from '../simulate/refractometer.ts'
import { timeOn } from '../simulate/shop-days.ts'
import type { ShopRun } from '../simulate/shop-run.ts'
import { toStep, typedNumber } from '../simulate/steps.ts'
import { arrange } from './appointment.ts'
import { early, keeper, late } from './roster.ts'

/** Instruments drift until somebody checks them; the mixer's nozzle clogs until somebody cleans it. */
export function planChecks(shop: ShopRun): void {
  const random = shop.randomOf('checks')
  for (let day = 7; day <= shop.last; day += 7) {
    shop.agenda.put(timeOn(shop.days, day, '04:00'), () => {
      shop.refractometerZero += random.normal(0.03)
      shop.mixerGain -= random.between(0.002, 0.008)
    })
  }
  for (let day = 9; day < shop.last - 2; day += 28) arrange(shop, day, '08:40', (ms) => checkRefractometer(shop, ms))
  for (let day = 16; day < shop.last - 2; day += 42) arrange(shop, day, '09:00', (ms) => checkMixer(shop, ms))
  for (const day of [4, 95, 190, 285]) arrange(shop, day, '15:10', (ms) => analyseWaters(shop, ms))
}

function checkRefractometer(shop: ShopRun, ms: number): void {
  const zero = toStep(shop.refractometerZero, refractometer.resolution / 2)
  shop.refractometerZero -= zero
  shop.journal.write({
    kind: 'check',
    about: { kind: 'instrument', id: refractometer.id },
    atMs: ms,
    by: early,
    typed: { zero: `${typedNumber(zero)} °Brix` },
    ...(zero === 0 ? {} : { note: 'Set to zero again' }),
    fields: { zero },
  })
}

/** The dial's promise against what the refractometer says of a fresh mix. */
function checkMixer(shop: ShopRun, ms: number): void {
  const [dial, strength] = mixer.settings[4]!
  const brix = toStep(brixOf(fluidOf('blue-40'), strength * shop.mixerGain), 0.1)
  const isClogged = shop.mixerGain < 0.94
  if (isClogged) shop.mixerGain = 1
  shop.journal.write({
    kind: 'check',
    about: { kind: 'mixer', id: mixer.id },
    atMs: ms,
    by: late,
    typed: { brix: `${typedNumber(brix)} °Brix` },
    ...(isClogged ? { note: 'Weak by the refractometer: nozzle cleaned, good again' } : {}),
    fields: { dial, brix, pressure: 3.2 },
  })
}

function analyseWaters(shop: ShopRun, ms: number): void {
  const random = shop.randomOf(`waters ${ms}`)
  for (const { id } of waters) {
    const { hardness, chloride, nitrate, conductivity, ph } = waterOf(id)
    const varied = (value: number, step: number) => toStep(value * (1 + random.normal(0.03)), step)
    shop.journal.write({
      kind: 'analysis',
      about: { kind: 'water', id },
      atMs: ms,
      by: keeper,
      fields: {
        hardness: varied(hardness, 1),
        chloride: varied(chloride, 1),
        nitrate: varied(nitrate, 0.5),
        conductivity: varied(conductivity, 0.01),
        ph: toStep(ph + random.normal(0.05), 0.1),
      },
    })
  }
}
