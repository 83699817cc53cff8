import { Keys } from './keys.tsx'
import type { StopState } from './use-stop.ts'

/** The keys, which type into the row one is at: a figure of a test, the refractometer, else the level. */
export function StopKeys({ stop: { draft, change, type, step, test } }: { stop: StopState }) {
  const { typed, tested } = draft
  const typeTest = (change_: (text: string) => string) => {
    if (test === null) return
    const { [test]: _, ...others } = tested.strips
    const texts = { ...tested.texts, [test]: change_(tested.texts[test] ?? '') }
    change({ tested: { ...tested, texts, strips: others } })
  }
  const press = (key: string) => {
    if (step === 'tests') return typeTest((text) => text + key)
    if (step === 'brix') return type({ brix: typed.brix + key })
    const isFresh = typed.levelBy === 'mark' || typed.levelBy === 'quarter'
    return type({ levelBy: isFresh ? 'volume' : typed.levelBy, level: isFresh ? key : typed.level + key })
  }
  const rub = () => {
    if (step === 'tests') return typeTest((text) => text.slice(0, -1))
    if (step === 'brix') return type({ brix: typed.brix.slice(0, -1) })
    return type({ level: typed.levelBy === 'quarter' ? '' : typed.level.slice(0, -1) })
  }
  return <Keys press={press} rub={rub} />
}
