'use client'

import { useEffect, useMemo, useState } from 'react'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Cloth } from '#app/_ui/cloth.tsx'
import { CopyText } from '#app/_ui/copy-text.tsx'
import { Fold } from '#app/_ui/fold.tsx'
import { Ready } from '#app/_ui/ready.tsx'
import { WordChoice } from '#app/_ui/word.tsx'
import { countOf, listText, sentence } from '#app/_words/clock.ts'
import { namesOf } from '#app/_words/names.ts'
import { drinksText, leftText, listAsText, moneyText, unwrittenText } from '#app/_words/shopping.ts'
import type { KnownNeed } from '#lib/domain/people.ts'
import { groupLines, priced } from '#lib/shopping/groups.ts'
import type { ShoppingList } from '#lib/shopping/line.ts'
import { needsToShopForAction } from './actions.ts'
import { AddLine } from './add-line.tsx'
import { listOf } from './list-of.ts'
import { ShopSection } from './shop-section.tsx'
import css from './shopping.module.css'
import { type Errand, errandChoices, isShown, type Whose, whoseChoices } from './view.ts'

/** The evening's shopping, one list for all who cook: by shop and aisle, split among them, ticked together. */
export function ShoppingScreen({ eveningId }: { readonly eveningId: string }) {
  const { evening, order, me } = usePlan()
  const needs = useNeeds(eveningId)
  const planned = order.kind === 'none' ? null : order.order
  const list = useMemo(() => listOf(evening, planned, needs), [evening, planned, needs])
  const names = useMemo(() => namesOf(evening), [evening])
  const [whose, setWhose] = useState<Whose>('all')
  const [errand, setErrand] = useState<Errand>('any')
  const [open, setOpen] = useState<string | null>(null)
  const mine = me?.cook ?? null
  const shown = list.lines.filter((line) => isShown(line, evening, mine, whose, errand))
  const toBuy = shown.filter(({ standing }) => standing.kind !== 'have')
  const there = shown.filter(({ standing }) => standing.kind === 'have')
  const groups = groupLines(toBuy)
  // What is sent elsewhere is made without the guests' needs.
  const asText = listAsText(
    groupLines(listOf(evening, planned, null).lines.filter((line) => isShown(line, evening, mine, whose, errand))),
    evening,
    names,
  )
  const unwritten = unwrittenText(evening, names)
  const toggle = (key: string) => setOpen(open === key ? null : key)
  return (
    <main id="main" className={css.main}>
      <Ready />
      <div className={css.head}>
        <h1>Shopping</h1>
        <p role="status" className={css.left}>
          {sentence(leftText(shown))}
        </p>
      </div>
      <p className={css.view}>
        Show <WordChoice label="Whose lines are shown" value={whose} options={whoseChoices(evening, mine)} onChoose={setWhose} />{' '}
        for{' '}
        <WordChoice
          label="For which day’s shopping"
          value={errand}
          options={errandChoices(evening, list.lines)}
          onChoose={setErrand}
        />
        .
      </p>
      {list.lines.length === 0 ? (
        <Cloth label="Shopping list">
          <p className={css.empty}>Nothing is wanted yet. Write what goes into the dishes on the menu, and it stands here.</p>
        </Cloth>
      ) : null}
      {groups.map((group) => (
        <ShopSection
          key={group.shop ?? ''}
          group={group}
          isOnly={groups.length === 1 && group.shop === null}
          names={names}
          open={open}
          onToggle={toggle}
        />
      ))}
      {unwritten && list.lines.length > 0 ? <p className={css.unwritten}>{unwritten}</p> : null}
      <AddLine />
      <Total list={list} />
      {there.length > 0 ? (
        <Fold title={`${sentence(countOf(there.length, 'thing'))} in the house already`}>
          {groupLines(there).map((group) => (
            <ShopSection key={group.shop ?? ''} group={group} isOnly plain names={names} open={open} onToggle={toggle} />
          ))}
        </Fold>
      ) : null}
      {list.strays.length > 0 ? (
        <Fold title={`${sentence(countOf(list.strays.length, 'thing'))} bought that nothing asks for any more`}>
          <ul className={css.parts}>
            {list.strays.map(({ key, food, by }) => (
              <li key={key}>
                {sentence(food)}
                {by.length > 0 ? `, by ${listText(by.map(names.cookName))}` : ''}
              </li>
            ))}
          </ul>
        </Fold>
      ) : null}
      <Fold title="Send it, or keep it as a table">
        <CopyText label="What is still to be got" text={asText} rows={8} send />
        <p>
          <a href={`/api/evenings/${eveningId}/shopping`} download>
            The whole list as a table (CSV)
          </a>
        </p>
      </Fold>
      <p className={css.quiet}>
        {evening.kitchens.length > 1 ? 'Each home shops for the dishes that it makes. ' : ''}
        {drinksText(list.lines, evening)} Amounts are those of the dishes for as many as they feed. On this device the list is
        kept for when there is no network.
      </p>
    </main>
  )
}

/** Without a connection, and for whom it is not to know, null: every label is read then for all that its food often has. */
const useNeeds = (eveningId: string): readonly KnownNeed[] | null => {
  const { onGuests } = usePlan()
  const [needs, setNeeds] = useState<readonly KnownNeed[] | null>(null)
  useEffect(() => {
    let isHere = true
    const ask = () =>
      needsToShopForAction(eveningId)
        .then((found) => {
          if (isHere) setNeeds(found)
        })
        .catch((why: unknown) => console.warn('the guests’ needs are not known here', why))
    void ask()
    const end = onGuests(() => void ask())
    return () => {
      isHere = false
      end()
    }
  }, [eveningId, onGuests])
  return needs
}

function Total({ list }: { readonly list: ShoppingList }) {
  const { total, without } = priced(list.lines)
  if (total === 0) return null
  return (
    <p className={css.total}>
      <b>{moneyText(total)}</b> in all{without > 0 ? `, and ${countOf(without, 'line')} without a price` : ''}
    </p>
  )
}
