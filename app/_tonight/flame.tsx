/** The candle: now. */
export function Flame({ size = 24 }: { readonly size?: number }) {
  return (
    <svg width={size * 0.625} height={size} viewBox="-7 -13.5 14 22.5" aria-hidden="true">
      <path d="M0 3.5V8" stroke="var(--wick)" strokeWidth="1.7" strokeLinecap="round" />
      <path d="M.9-12.5C3.4-8.4 4.5-5 4.5-1.2A4.5 5 0 0 1-4.5-1.2C-4.5-4.6-1.5-7.6.9-12.5z" fill="var(--now)" />
    </svg>
  )
}
