'use client'

import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { Cloth } from '#app/_ui/cloth.tsx'
import type { Names } from '#app/_words/names.ts'
import { aisleText, shopText } from '#app/_words/shopping.ts'
import type { AisleGroup, ShopGroup } from '#lib/shopping/groups.ts'
import type { Line } from '#lib/shopping/line.ts'
import { LineRow } from './line-row.tsx'
import css from './shopping.module.css'
import { useLines } from './use-line.ts'

interface Props {
  readonly group: ShopGroup
  /** There is no other: its name says nothing. */
  readonly isOnly: boolean
  /** Without the cloth: within a fold. */
  readonly plain?: boolean
  readonly names: Names
  readonly open: string | null
  readonly onToggle: (key: string) => void
}

/** What one shop has, aisle by aisle. */
export function ShopSection({ group, isOnly, plain = false, names, open, onToggle }: Props) {
  const name = shopText(group.shop)
  const content = (
    <>
      {isOnly ? null : (
        <div className={css.shop}>
          <h2>{name}</h2>
          <Take lines={group.aisles.flatMap(({ lines }) => lines)} what={name} />
        </div>
      )}
      {group.aisles.map((aisle) => (
        <Aisle
          key={aisleText(aisle.aisle)}
          aisle={aisle}
          plain={plain}
          isTop={isOnly}
          names={names}
          open={open}
          onToggle={onToggle}
        />
      ))}
    </>
  )
  return plain ? content : <Cloth label={isOnly ? 'Shopping list' : name}>{content}</Cloth>
}

interface AisleProps extends Pick<Props, 'names' | 'open' | 'onToggle'> {
  readonly aisle: AisleGroup
  readonly plain: boolean
  /** No shop stands above it. */
  readonly isTop: boolean
}

function Aisle({ aisle, plain, isTop, names, open, onToggle }: AisleProps) {
  const name = aisleText(aisle.aisle)
  return (
    <section className={css.aisle} aria-label={name}>
      <div className={css.aisleHead}>
        {isTop ? <h2>{name}</h2> : <h3>{name}</h3>}
        {plain ? null : <Take lines={aisle.lines} what={name} />}
      </div>
      <ul>
        {aisle.lines.map((line) => (
          <LineRow key={line.key} line={line} names={names} isOpen={open === line.key} onToggle={() => onToggle(line.key)} />
        ))}
      </ul>
    </section>
  )
}

/** Takes all of an aisle or a shop that nobody has taken; all of it are one's own already: gives it back. */
function Take({ lines, what }: { readonly lines: readonly Line[]; readonly what: string }) {
  const { me } = usePlan()
  const { tell } = useLines()
  const mine = me?.cook ?? null
  if (mine === null) return null
  const free = lines.filter(({ by, home }) => by === null && home === null)
  if (free.length > 0)
    return (
      <Button tone="word" onClick={() => tell(free, { by: mine })} aria-label={`I’ll get these: ${what}`}>
        I’ll get these
      </Button>
    )
  const own = lines.filter(({ by }) => by === mine)
  return own.length === lines.length ? (
    <Button tone="quiet" onClick={() => tell(own, { by: undefined })} aria-label={`I leave these to others: ${what}`}>
      give back
    </Button>
  ) : null
}
