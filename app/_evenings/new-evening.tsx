'use client'

import { useRouter } from 'next/navigation'
import { useEffect, useState } from 'react'
import { newId } from '#app/_frame/new-id.ts'
import { askServer } from '#app/_recipes/ask-server.ts'
import { FIRST_START, FIRST_VERSION, type FirstDraft, guessDecimal, rescueFirst } from '#app/_recipes/first-draft.ts'
import { browserShelf, openKept, useKept } from '#app/_recipes/kept.ts'
import { entriesOf, type MenuDraft, menuDraftOf, withRecipes } from '#app/_recipes/menu-draft.ts'
import { MenuPreview } from '#app/_recipes/menu-preview.tsx'
import { PasteBox } from '#app/_recipes/paste-box.tsx'
import css from '#app/_recipes/recipes.module.css'
import { Sources } from '#app/_recipes/sources.tsx'
import { readTimes, timesShown } from '#app/_recipes/times.ts'
import { TimesWords } from '#app/_recipes/times-words.tsx'
import { useReading } from '#app/_recipes/use-reading.ts'
import { Button } from '#app/_ui/button.tsx'
import { Cloth } from '#app/_ui/cloth.tsx'
import { Notice } from '#app/_ui/notice.tsx'
import { countOf, sentence } from '#app/_words/clock.ts'
import { unreadText } from '#app/_words/recipe.ts'
import { readPaste } from '#lib/recipes/read-paste.ts'

interface Props {
  readonly userId: string
  readonly host: string
  readonly today: string
}

const HINT =
  'A menu, a line for each course; or recipes, one after the other; or both. Your own notes will do. Leave it empty to start from nothing.'

const seenText = (menu: MenuDraft): string => {
  const dishes = menu.courses.flatMap((course) => course.dishes)
  const recipes = dishes.filter((dish) => dish.hasRecipe).length
  return sentence(
    `${countOf(menu.courses.length, 'course')}, ${countOf(dishes.length, 'dish', 'dishes')}, ${countOf(recipes, 'recipe')}.`,
  )
}

/** From a paste to a running order: what there is to eat, what was understood of it, when and who. */
export function NewEvening({ userId, host, today }: Props) {
  const router = useRouter()
  const [kept] = useState(() => openKept(browserShelf(), `tableward:new:${userId}`, FIRST_VERSION, FIRST_START, rescueFirst))
  const { value: draft, isKept } = useKept(kept, FIRST_START)
  const [before, setBefore] = useState<MenuDraft | null>(null)
  const [unread, setUnread] = useState<string | null>(null)
  const [zone, setZone] = useState('Europe/London')
  const [wrong, setWrong] = useState<Readonly<Record<string, string>>>({})
  const [refused, setRefused] = useState<string | null>(null)
  const [making, setMaking] = useState(false)
  useEffect(() => setZone(Intl.DateTimeFormat().resolvedOptions().timeZone || 'Europe/London'), [])

  const put = (patch: Partial<FirstDraft>) => kept.set({ ...kept.get(), ...patch })
  const decimal = draft.decimal ?? guessDecimal(draft.paste)
  const { times, pasted } = timesShown(draft.times, draft.facts ?? null, today)
  const covers = Number(times.covers) || 6
  const correct = (menu: MenuDraft) => put({ menu, isCorrected: true })

  const read = (paste: string) => {
    if (paste.trim() === '') {
      setUnread(null)
      put({ menu: null, facts: null, readFrom: '', isCorrected: false })
      return
    }
    const found = readPaste(paste, decimal)
    setUnread(found.ok ? null : unreadText(found.error))
    put({
      menu: found.ok ? menuDraftOf(found.value, decimal, newId) : null,
      facts: found.ok ? found.value.facts : null,
      readFrom: paste,
      isCorrected: false,
    })
  }
  const busy = useReading(draft.paste, `${decimal} ${draft.isCorrected}`, (paste) => {
    const now = kept.get()
    const isSame = now.menu !== null && now.readFrom === paste && (now.decimal ?? guessDecimal(paste)) === decimalOf(now)
    if (!now.isCorrected && !isSame) read(paste)
  })
  const isBehind = draft.isCorrected && draft.readFrom !== draft.paste

  const bring = (text: string, source: string | null): string | null => {
    const mark = guessDecimal(text)
    const found = readPaste(text, mark)
    if (!found.ok) return unreadText(found.error)
    const menu = kept.get().menu
    if (found.value.recipes.length === 0 && menu) return 'There is no recipe in this.'
    if (!menu) put({ facts: found.value.facts })
    correct(
      menu
        ? withRecipes(menu, found.value.recipes, source, mark, newId)
        : withSource(menuDraftOf(found.value, mark, newId), source),
    )
    return null
  }

  const make = async () => {
    const asked = readTimes(times)
    setRefused(null)
    if (!asked.ok) {
      setWrong(asked.error as Readonly<Record<string, string>>)
      return
    }
    setWrong({})
    setMaking(true)
    const menu = kept.get().menu
    const { assumed: _assumed, ...entries } = entriesOf(menu ?? { courses: [], leftOver: [] }, {
      covers: asked.value.covers,
      kitchen: 'home',
      newId,
    })
    const made = await askServer<{ readonly id: string }>('/api/evenings', {
      ...asked.value,
      zone,
      ...(menu ? { menu: entries } : {}),
    })
    if (!made.ok) {
      setMaking(false)
      setWrong(made.error.fields)
      setRefused(made.error.message)
      return
    }
    kept.clear()
    router.push(entries.steps.length > 0 ? `/evenings/${made.value.id}/order?first=yes` : `/evenings/${made.value.id}/menu`)
  }

  const hasMenu = draft.menu !== null && draft.menu.courses.length > 0
  return (
    <div className={css.flow}>
      <section aria-labelledby="what">
        <h2 id="what">What is there to eat?</h2>
        <PasteBox
          label="Paste a menu or recipes"
          hint={HINT}
          text={draft.paste}
          onText={(paste) => put({ paste })}
          decimal={decimal}
          onDecimal={(next) => put({ decimal: next, ...(draft.isCorrected ? {} : { readFrom: '' }) })}
          seen={busy ? 'Reading…' : draft.menu ? seenText(draft.menu) : null}
          wrong={draft.paste.trim() === '' ? null : unread}
        />
        <details className={css.more}>
          <summary>From a file, or a web address</summary>
          <Sources named="" onText={bring} />
        </details>
        <p className={css.said} role="status">
          {isKept
            ? 'What you write here is kept on this device only, until the evening is made.'
            : 'This device keeps nothing: what you write here is gone when you leave the page.'}
        </p>
      </section>
      {hasMenu && draft.menu ? (
        <section aria-labelledby="understood">
          <h2 id="understood">What was understood</h2>
          <p className={css.said}>Put right what is wrong; underlined words can be written over. Nothing is saved yet.</p>
          {isBehind ? (
            <Notice tone="quiet">
              The text above has changed since you corrected this.{' '}
              <Button
                tone="word"
                onClick={() => {
                  setBefore(draft.menu)
                  read(draft.paste)
                }}
              >
                Read it again, without my corrections
              </Button>
            </Notice>
          ) : null}
          {before && !draft.isCorrected ? (
            <Notice tone="quiet">
              It was read again.{' '}
              <Button
                tone="word"
                onClick={() => {
                  correct(before)
                  setBefore(null)
                }}
              >
                Bring my corrections back
              </Button>
            </Notice>
          ) : null}
          <Cloth label="The menu as it was understood">
            <MenuPreview menu={draft.menu} covers={covers} newKey={newId} onChange={correct} />
          </Cloth>
        </section>
      ) : null}
      <section aria-labelledby="when">
        <h2 id="when">When, and who?</h2>
        <TimesWords
          times={times}
          pasted={pasted}
          host={host}
          zone={zone}
          wrong={wrong}
          onChange={(patch) => put({ times: { ...kept.get().times, ...patch } })}
        />
      </section>
      <div className={css.make}>
        {refused ? <Notice>{refused}</Notice> : null}
        <Button tone="now" large disabled={making} onClick={() => void make()}>
          {making ? 'Laying the table…' : hasMenu ? 'Make the running order' : 'Plan this evening'}
        </Button>
      </div>
    </div>
  )
}

const decimalOf = (draft: FirstDraft) => draft.menu?.courses[0]?.dishes[0]?.draft.decimal ?? guessDecimal(draft.paste)

const withSource = (menu: MenuDraft, source: string | null): MenuDraft => ({
  ...menu,
  courses: menu.courses.map((course) => ({
    ...course,
    dishes: course.dishes.map((dish) => (dish.hasRecipe ? { ...dish, draft: { ...dish.draft, source } } : dish)),
  })),
})
