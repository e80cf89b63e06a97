import css from './stitches.module.css'

const MOST = 30

/** Last-minute minutes: one stitch a minute and the figure. None is the word "none". */
export function Stitches({ minutes }: { readonly minutes: number }) {
  const whole = Math.round(minutes)
  if (whole === 0) return <span className={css.none}>none</span>
  const shown = Math.min(whole, MOST)
  const width = shown * 6.5 - 2.5
  return (
    <span className={css.stitches}>
      <svg width={width} height="18" viewBox={`0 0 ${width} 18`} aria-hidden="true">
        {Array.from({ length: shown }, (_, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: stitches are all alike
          <path key={index} d={`M${2 + index * 6.5} 14V4`} />
        ))}
      </svg>
      {whole}
      <span className="vh"> {whole === 1 ? 'minute' : 'minutes'}</span>
    </span>
  )
}
