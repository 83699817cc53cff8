import { useId } from 'preact/hooks'

interface SliderFieldProps {
  label: string
  value: number
  /** The value in words, beside the label and for who hears the page. */
  says: string
  min: number
  max: number
  step: number
  /** While it is moved. */
  onSlide(value: number): void
}

/** A figure that is tried by sliding: with the thumb, or with the arrow keys. */
export function SliderField({ label, value, says, min, max, step, onSlide }: SliderFieldProps) {
  const id = useId()
  return (
    <div class="field slider">
      <label for={id}>
        {label} <output for={id}>{says}</output>
      </label>
      <input
        id={id}
        type="range"
        min={min}
        max={max}
        step={step}
        value={value}
        aria-valuetext={says}
        onInput={(event) => onSlide(event.currentTarget.valueAsNumber)}
      />
    </div>
  )
}
