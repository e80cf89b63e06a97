'use client'

import { useSearchParams } from 'next/navigation'
import { type ReactNode, useMemo, useState } from 'react'
import { listOf } from '#app/_shopping/list-of.ts'
import { type Errand, errandChoices, isShown, type Whose, whoseChoices } from '#app/_shopping/view.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { WordChoice } from '#app/_ui/word.tsx'
import { countOf } from '#app/_words/clock.ts'
import { namesOf } from '#app/_words/names.ts'
import { needLines, type PaperSize, printedText, type SheetKind, sheetNames, usualPaper } from '#app/_words/print.ts'
import { homesOf } from '#lib/potluck/home-sheet.ts'
import { safetyOf } from '#lib/safety/safety-of.ts'
import type { TableNeeds } from '#server/guests/needs.ts'
import css from './card.module.css'
import { CookSheet } from './cook-sheet.tsx'
import { HomeSheetPage } from './home-sheet.tsx'
import { MenuCard } from './menu-card.tsx'
import { Paper } from './paper.tsx'
import { Scaled } from './scaled.tsx'
import { ShoppingSheet } from './shopping-sheet.tsx'
import { WallSheet } from './wall-sheet.tsx'

interface Props {
  readonly sheet: SheetKind
  readonly eveningId: string
  readonly needs: TableNeeds
}

const EVERYBODY = ''

/** One thing to print, with what can be chosen of it. */
export function SheetScreen({ sheet, eveningId, needs }: Props) {
  const { evening, order, me, now } = usePlan()
  const asked = useSearchParams()
  const [paper, setPaper] = useState<PaperSize | null>(null)
  const [cook, setCook] = useState(() => asked.get('cook') ?? me?.cook ?? EVERYBODY)
  const [isTwoUp, setTwoUp] = useState(false)
  const [withDrinks, setWithDrinks] = useState(true)
  const [withAllergens, setWithAllergens] = useState(false)
  const [withNeeds, setWithNeeds] = useState(true)
  const [pages, setPages] = useState(1)
  const [whose, setWhose] = useState<Whose>('all')
  const [errand, setErrand] = useState<Errand>('any')
  const planned = order.kind === 'none' ? null : order.order
  const names = useMemo(() => namesOf(evening), [evening])
  const findings = useMemo(() => (planned ? safetyOf(evening, planned, { isHot: false }) : []), [evening, planned])
  const foot = printedText(now(), evening.zone, order.kind !== 'current')
  const size = paper ?? usualPaper(evening)
  const frame = (children: ReactNode, more: { across?: boolean; choices?: ReactNode; note?: string | null } = {}) => (
    <Paper title={sheetNames[sheet]} back={`/evenings/${eveningId}/print`} paper={size} onPaper={setPaper} {...more}>
      {children}
    </Paper>
  )
  const needsChoice = (
    <>
      {' '}
      and{' '}
      <WordChoice
        label="What guests must not have"
        value={withNeeds ? 'with' : 'without'}
        options={[
          ['with', 'with what guests must not have'],
          ['without', 'without a word of the guests'],
        ]}
        onChoose={(choice) => setWithNeeds(choice === 'with')}
      />
    </>
  )
  if (sheet === 'menu') {
    const card = <MenuCard evening={evening} drinks={withDrinks} allergens={withAllergens} />
    return frame(
      isTwoUp ? (
        <div className={css.pair}>
          {card}
          {card}
        </div>
      ) : (
        card
      ),
      {
        across: isTwoUp,
        choices: (
          <>
            ,{' '}
            <WordChoice
              label="How many on a page"
              value={isTwoUp ? 'two' : 'one'}
              options={[
                ['one', 'one to a page'],
                ['two', 'two to a page, to cut apart'],
              ]}
              onChoose={(choice) => setTwoUp(choice === 'two')}
            />
            ,{' '}
            <WordChoice
              label="Drinks"
              value={withDrinks ? 'with' : 'without'}
              options={[
                ['with', 'with the drinks'],
                ['without', 'without the drinks'],
              ]}
              onChoose={(choice) => setWithDrinks(choice === 'with')}
            />{' '}
            and{' '}
            <WordChoice
              label="Allergens"
              value={withAllergens ? 'with' : 'without'}
              options={[
                ['without', 'without allergens'],
                ['with', 'with what is known of allergens'],
              ]}
              onChoose={(choice) => setWithAllergens(choice === 'with')}
            />
            .
          </>
        ),
      },
    )
  }
  if (sheet === 'shopping') {
    const { lines } = listOf(evening, planned, null)
    return frame(
      <ShoppingSheet
        evening={evening}
        names={names}
        lines={lines.filter((line) => isShown(line, evening, me?.cook ?? null, whose, errand))}
        foot={foot}
      />,
      {
        choices: (
          <>
            ,{' '}
            <WordChoice label="Whose list" value={whose} options={whoseChoices(evening, me?.cook ?? null)} onChoose={setWhose} />{' '}
            for <WordChoice label="Which day" value={errand} options={errandChoices(evening, lines)} onChoose={setErrand} />.
          </>
        ),
      },
    )
  }
  if (!planned)
    return frame(<p>The running order is not planned yet. It is made of the steps of the dishes, and comes by itself.</p>)
  const shared = { evening, order: planned, names, foot, needs: withNeeds ? needLines(needs) : null }
  if (sheet === 'wall')
    return frame(
      <Scaled>
        <WallSheet key={`${size} ${shared.needs === null}`} {...shared} onPages={setPages} />
      </Scaled>,
      {
        across: true,
        choices: <>{needsChoice}.</>,
        note:
          pages > 1
            ? `All of it does not go on one page in letters that can be read on a wall: it takes ${pages === 2 ? '' : 'up to '}${countOf(pages, 'page')}.`
            : null,
      },
    )
  if (sheet === 'homes') {
    const homes = homesOf(evening)
    return frame(
      homes.length === 0 ? (
        <p>Nothing comes from another home.</p>
      ) : (
        homes.map((kitchen) => <HomeSheetPage key={kitchen} {...shared} kitchen={kitchen} />)
      ),
    )
  }
  const cooks = evening.cooks.filter(({ id }) => cook === EVERYBODY || id === cook)
  return frame(
    cooks.map(({ id }) => <CookSheet key={id} {...shared} cook={id} findings={findings} />),
    {
      choices: (
        <>
          {' '}
          for{' '}
          <WordChoice
            label="Whose sheet"
            value={cook}
            options={[
              [EVERYBODY, 'every cook'] as const,
              ...evening.cooks.map(({ id, name }) => [id, name || 'a cook without a name'] as const),
            ]}
            onChoose={setCook}
          />
          {needsChoice}.
        </>
      ),
    },
  )
}
