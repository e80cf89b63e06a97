import { clockText } from '#app/_words/clock.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import css from './oven-ribbon.module.css'

interface Props {
  readonly line: RunningOrder['ovens'][number]['line']
  readonly nowMs: number
  /** What is in it and when. */
  readonly inside: readonly { readonly key: string; readonly from: number; readonly to: number }[]
  readonly zone: string
  readonly name: string
}

const WIDTH = 296
const HEIGHT = 62
const BEFORE_MS = 10 * 60_000
const SPAN_MS = 130 * 60_000
const COLD = 20
const HOT = 260
const MOST_STITCHES = 4

/** The oven from ten minutes ago on, as high as it is hot, with what is in it as stitches. */
export function OvenRibbon({ line, nowMs, inside, zone, name }: Props) {
  const from = nowMs - BEFORE_MS
  const x = (ms: number) => Math.max(0, Math.min(WIDTH, ((ms - from) / SPAN_MS) * WIDTH))
  const y = (c: number) => HEIGHT - ((Math.max(COLD, Math.min(HOT, c)) - COLD) / (HOT - COLD)) * (HEIGHT - 8)
  const points = line.map(({ at, c }) => ({ ms: Date.parse(at), c }))
  const heat = points.map(({ ms, c }) => `${x(ms).toFixed(1)} ${y(c).toFixed(1)}`)
  const [first, last] = [points[0], points[points.length - 1]]
  if (!first || !last || last.ms < from) return null
  const edge = `M${heat.join('L')}`
  const fill = `${edge}L${x(last.ms).toFixed(1)} ${HEIGHT}L${x(first.ms).toFixed(1)} ${HEIGHT}Z`
  const stitches = inside.filter(({ to, from: begins }) => to > from && begins < from + SPAN_MS).slice(0, MOST_STITCHES)
  const told = points
    .filter(({ ms }, index) => ms > nowMs && ms < from + SPAN_MS && points[index + 1]?.c === points[index]?.c)
    .map(({ ms, c }) => `${Math.round(c)} degrees at ${clockText(ms, zone)}`)
  return (
    <svg
      className={css.ribbon}
      width={WIDTH}
      height={HEIGHT}
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={told.length > 0 ? `${name}, coming: ${told.join(', ')}` : `${name}, the next two hours`}
    >
      <path className={css.heat} d={fill} />
      <path className={css.edge} d={edge} />
      {stitches.map((stitch, index) => (
        <path
          key={stitch.key}
          className={css.stitch}
          d={`M${x(stitch.from).toFixed(1)} ${HEIGHT - 11 - index * 10}H${x(stitch.to).toFixed(1)}`}
        />
      ))}
      <path className={css.now} d={`M${x(nowMs).toFixed(1)} 4V${HEIGHT}`} />
    </svg>
  )
}
