import { type DishColour, PlateShape } from '#app/_ui/plate.tsx'

/** A plate that is kept apart: its tag is on the rim, and beside it stand the words. */
export function GuardedPlate({ size, colour = null }: { readonly size: number; readonly colour?: DishColour | null }) {
  return (
    <svg width={size} height={size} viewBox="0 0 64 64" aria-hidden="true">
      <PlateShape x={28} y={36} r={26} colour={colour} />
      <g transform="rotate(9 49 15)">
        <rect x="37" y="3" width="25" height="25" rx="6" fill="var(--late)" />
        <path d="M49.5 8v9M49.5 21.5v1.5" stroke="var(--on-late)" strokeWidth="3.4" strokeLinecap="round" />
      </g>
    </svg>
  )
}
