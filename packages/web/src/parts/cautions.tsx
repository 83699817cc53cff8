import { message, say } from '@sumpbook/fluid'

const guidance = message(
  "Guidance only: the fluid's label and safety data sheet, the supplier and local rules come first.",
)

/** Cautions of this recipe; the one that holds for every recipe stands once at the foot of the page. */
export function Cautions({ cautions }: { cautions: readonly string[] }) {
  const own = cautions.filter((caution) => caution !== say(guidance) && caution !== guidance)
  if (own.length === 0) return null
  return (
    <ul class="cautions" aria-label={say('Cautions')}>
      {own.map((caution) => (
        <li>{caution}</li>
      ))}
    </ul>
  )
}
