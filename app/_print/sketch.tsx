import type { SheetKind } from '#app/_words/print.ts'
import css from './print.module.css'

interface Stroke {
  readonly x: number
  readonly y: number
  readonly width: number
  /** How thick: a heading, a line, a small line. */
  readonly height: number
}

const row = (y: number, x: number, width: number, height = 2): Stroke => ({ x, y, width, height })
const middle = (y: number, width: number, height = 2): Stroke => row(y, 60 - width / 2, width, height)
/** Clock, words, and on some sheets words below. */
const timed = (y: number, width: number, x = 16): readonly Stroke[] => [row(y, x, 9, 3), row(y, x + 14, width, 3)]

const STROKES: Readonly<Record<SheetKind, readonly Stroke[]>> = {
  menu: [
    middle(24, 54, 6),
    ...[48, 76, 104, 132].flatMap((y) => [middle(y, 14, 1), middle(y + 8, 50 - (y % 3) * 6, 4), middle(y + 16, 26)]),
  ],
  cooks: [
    row(18, 16, 34, 7),
    ...[36, 84, 128].flatMap((y) => [
      row(y, 16, 30, 4),
      ...[10, 19, 28]
        .filter((more) => y + more < 150)
        .flatMap((more) => [...timed(y + more, 48 - more), row(y + more, 98, 5, 5)]),
    ]),
  ],
  homes: [
    row(18, 16, 46, 7),
    ...[38, 50, 62, 74].flatMap((y) => timed(y, 60 - (y % 4) * 8)),
    row(92, 16, 88, 1),
    ...[104, 116, 128].flatMap((y) => timed(y, 52)),
  ],
  wall: [
    row(14, 12, 40, 5),
    ...[0, 1, 2].flatMap((column) =>
      Array.from({ length: 13 }, (_, at) =>
        row(30 + at * 9, 12 + column * 34, at % 5 === 4 ? 28 : 20 + ((at * 7) % 9), at % 5 === 4 ? 4 : 2),
      ),
    ),
  ],
  shopping: [
    row(18, 16, 40, 6),
    ...[36, 48, 60, 72, 90, 102, 114, 126].flatMap((y) => [row(y, 16, 6, 6), row(y + 2, 28, 40 + (y % 5) * 6, 3)]),
  ],
}

/** A small picture of a sheet; what it is stands beside it in words. */
export function Sketch({ kind }: { readonly kind: SheetKind }) {
  return (
    <svg className={css.sketch} viewBox="0 0 120 160" aria-hidden="true">
      <rect width="120" height="160" className={css.leaf} />
      {STROKES[kind].map(({ x, y, width, height }) => (
        <rect key={`${x} ${y} ${width}`} x={x} y={y} width={width} height={height} rx={0.6} />
      ))}
    </svg>
  )
}
