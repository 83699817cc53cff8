const guidance = /^Guidance only/

/** Cautions of this recipe; the one that holds for every recipe stands once at the foot of the page. */
export function Cautions({ cautions }: { cautions: readonly string[] }) {
  const own = cautions.filter((caution) => !guidance.test(caution))
  if (own.length === 0) return null
  return (
    <ul class="cautions" aria-label="Cautions">
      {own.map((caution) => (
        <li>{caution}</li>
      ))}
    </ul>
  )
}
