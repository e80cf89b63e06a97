import { encode } from 'uqr'
import css from './invitations.module.css'

/** A link as a code that a phone's camera reads: dark on light in both themes, as cameras want it. */
export function Qr({ text, label }: { readonly text: string; readonly label: string }) {
  const { data, size } = encode(text, { ecc: 'M', border: 2 })
  const path = data.flatMap((row, y) => row.flatMap((dark, x) => (dark ? [`M${x} ${y}h1v1h-1z`] : []))).join('')
  return (
    <svg className={css.qr} viewBox={`0 0 ${size} ${size}`} role="img" aria-label={label} shapeRendering="crispEdges">
      <rect width={size} height={size} fill="#fff" />
      <path d={path} fill="#000" />
    </svg>
  )
}
