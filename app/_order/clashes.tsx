'use client'

import { memo, useEffect, useRef, useState } from 'react'
import { clashKey, clashText, clashTitle, noWayText } from '#app/_words/clash.ts'
import { listText } from '#app/_words/clock.ts'
import type { Names } from '#app/_words/names.ts'
import type { Clash, RunningOrder } from '#lib/domain/running-order.ts'
import { useChoose } from './choose.tsx'
import css from './clashes.module.css'
import { Pieces } from './reasons.tsx'
import { WayOut } from './way-out.tsx'

interface Props {
  readonly order: RunningOrder
  readonly names: Names
  /** A better order is being looked for: what clashes may be gone in a second. */
  readonly isEarly: boolean
  /** Ways out are being looked for. */
  readonly isLooking: boolean
}

/** What no order can keep: each clash with its ways out. The first one is open, and whichever is chosen in the drawing. */
export const Clashes = memo(function Clashes({ order, names, isEarly, isLooking }: Props) {
  const { clash: chosen } = useChoose()
  if (order.clashes.length === 0) return null
  if (isEarly) return <p className={css.early}>Something does not fit yet. A better order is being looked for.</p>
  return (
    <ul className={css.clashes} aria-label="Clashes">
      {keyed(order.clashes).map(({ clash, key, own }, index) => (
        <ClashItem
          key={own}
          clash={clash}
          order={order}
          names={names}
          isLooking={isLooking}
          isFirst={index === 0}
          isChosen={key === chosen}
        />
      ))}
    </ul>
  )
})

/** Each under what it is of, and a key of its own: batches of one step may clash alike. */
const keyed = (clashes: readonly Clash[]) => {
  const keys = clashes.map(clashKey)
  return clashes.map((clash, at) => {
    const key = keys[at] ?? ''
    return { clash, key, own: `${key} ${keys.slice(0, at).filter((other) => other === key).length}` }
  })
}

interface ItemProps extends Omit<Props, 'isEarly'> {
  readonly clash: Clash
  readonly isFirst: boolean
  readonly isChosen: boolean
}

function ClashItem({ clash, order, names, isLooking, isFirst, isChosen }: ItemProps) {
  const [isOpen, setOpen] = useState(isFirst)
  const head = useRef<HTMLButtonElement>(null)
  useEffect(() => {
    // Chosen in the drawing: what is said about it takes over.
    if (!isChosen) return
    setOpen(true)
    head.current?.focus()
  }, [isChosen])
  return (
    <li className={css.clash}>
      <h2>
        <button ref={head} type="button" className={css.title} aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
          {clashTitle(clash, order.zone)}
        </button>
      </h2>
      {isOpen ? (
        <>
          <p>{clashText(clash, names, order.cues)}</p>
          <Parties clash={clash} order={order} names={names} />
          {clash.ways.length > 0 ? (
            <>
              <h3>{clash.ways.length === 1 ? 'A way out' : 'Ways out'}</h3>
              <ul className={css.ways}>
                {clash.ways.map((way, index) => (
                  <WayOut key={JSON.stringify(way)} way={way} clash={clash} names={names} isFirst={index === 0} />
                ))}
              </ul>
            </>
          ) : isLooking ? (
            <p className={css.looking} role="status">
              Ways out are being looked for.
            </p>
          ) : (
            <>
              <h3>No way out was found so far</h3>
              <p>{noWayText(clash, names, order.proof)}</p>
            </>
          )}
        </>
      ) : null}
    </li>
  )
}

/** Who takes part in it, each to be looked at. */
function Parties({ clash, order, names }: { readonly clash: Clash; readonly order: RunningOrder; readonly names: Names }) {
  const steps = clash.steps.slice(0, 4).map((id) => ({ to: 'step', id, words: names.stepName(id) }) as const)
  const kit = clash.kit === null ? [] : [{ to: 'kit', id: clash.kit, words: names.kitName(clash.kit) } as const]
  const all = [...steps, ...kit]
  if (all.length === 0) return null
  return (
    <ul className={css.parties} aria-label={`Show what it is about: ${listText(all.map(({ words }) => words))}`}>
      {all.map((piece) => (
        <li key={piece.id}>
          <Pieces pieces={[piece]} order={order} />
        </li>
      ))}
    </ul>
  )
}
