import css from './ticks.module.css'

interface Props<T extends string> {
  readonly legend: string
  readonly options: readonly (readonly [value: T, words: string])[]
  readonly ticked: readonly string[]
  readonly onTick: (value: T) => void
}

/** Several words of which any may be true: each a box to tick. */
export function Ticks<T extends string>({ legend, options, ticked, onTick }: Props<T>) {
  return (
    <fieldset className={css.ticks}>
      <legend>{legend}</legend>
      {options.map(([value, words]) => (
        <label key={value} className={css.tick}>
          <input type="checkbox" checked={ticked.includes(value)} onChange={() => onTick(value)} />
          {words}
        </label>
      ))}
    </fieldset>
  )
}
