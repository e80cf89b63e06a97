'use client'

import { useEffect, useMemo, useState } from 'react'
import { usePrice } from '#app/_frame/use-price.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { sentence } from '#app/_words/clock.ts'
import type { Comparison } from '#app/_words/compare.ts'
import { refusalText } from '#app/_words/link.ts'
import type { Names } from '#app/_words/names.ts'
import { effortText, evenText, exceptionText, givenText, partName, partReasonText, shareText } from '#app/_words/share.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import type { Wish } from '#lib/plan/decide-claim.ts'
import { type Part, suggestSplit, type WantedClaim } from '#lib/sharing/split.ts'
import css from './share.module.css'

/** The suggested parts, each to be ticked off, what they come to, and taking them; those just taken may be given back. */
export function SuggestedParts({ order, names }: { readonly order: RunningOrder; readonly names: Names }) {
  const { evening, me, send } = usePlan()
  const split = useMemo(() => suggestSplit(evening, order), [evening, order])
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set())
  const [given, setGiven] = useState<{ readonly done: readonly WantedClaim[]; readonly says: string } | null>(null)
  const [busy, setBusy] = useState(false)
  const maySay = ({ cook }: { readonly cook: string }) => me?.role === 'host' || me?.cook === cook
  const mayTake = (part: Part) => maySay(part)
  const ticked = split.parts.filter((part) => mayTake(part) && !left.has(part.key))
  const wishes = ticked
    .flatMap(({ claims }) => claims.filter(maySay))
    .map(({ target, cook }): Wish => ({ kind: 'claim', target, cook }))

  const ask = async (all: readonly Wish[]) => {
    setBusy(true)
    const outcomes = await Promise.all(all.map(send))
    setBusy(false)
    return all.map((wish, at) => ({ wish, outcome: outcomes[at] }))
  }
  const take = async () => {
    // A step that goes to another cook than its dish first, so that nobody is asked to be at two things meanwhile.
    const answers = await ask([...wishes].sort((a, b) => Number(isStep(b)) - Number(isStep(a))))
    const done = answers.flatMap(({ wish, outcome }) =>
      outcome?.kind === 'done' ? [{ target: wish.target, cook: wish.cook }] : [],
    )
    const refused = answers.flatMap(({ wish, outcome }) =>
      outcome?.kind === 'refused' ? [`${sentence(targetName(wish.target, names))}: ${refusalText(outcome.why, names)}`] : [],
    )
    setGiven({ done, says: givenText(done.length, refused) })
  }
  const isStep = ({ target }: Wish): boolean => names.step(target) !== undefined
  const giveBack = async (done: readonly WantedClaim[]) => {
    await ask(done.map(({ target, cook }): Wish => ({ kind: 'release', target, cook })))
    setGiven(null)
  }

  return (
    <>
      {split.parts.length > 0 ? (
        <>
          <ul className={css.parts}>
            {split.parts.map((part) => (
              <PartLine
                key={part.key}
                part={part}
                names={names}
                mayTake={mayTake(part)}
                isTicked={!left.has(part.key)}
                onTick={() =>
                  setLeft(new Set(left.has(part.key) ? [...left].filter((key) => key !== part.key) : [...left, part.key]))
                }
              />
            ))}
          </ul>
          <p>With all of it: {split.cooks.map((share) => shareText(share, names)).join('; ')}.</p>
          <p className={css.quiet}>{evenText(split.cooks, names)}</p>
          {split.unplaced.length > 0 ? (
            <p className={css.price}>
              The running order has no place for {split.unplaced.map((step) => `“${names.stepName(step)}”`).join(', ')}; see its
              clashes.
            </p>
          ) : null}
          <SplitPrice wishes={wishes} />
          <p className={css.offer}>
            <Button onClick={take} disabled={busy || wishes.length === 0}>
              {me?.role === 'host' ? 'Share it out so' : 'I’ll take mine'}
            </Button>
            {me?.role === 'host' ? null : <span>What is for others, they or a host take.</span>}
          </p>
        </>
      ) : (
        <p>Everything that has a place in the running order has somebody.</p>
      )}
      <div role="status">
        {busy ? <em>asking…</em> : null}
        {given && !busy ? (
          <p className={css.offer}>
            {given.says}{' '}
            {given.done.length > 0 ? (
              <Button tone="word" onClick={() => giveBack(given.done)}>
                Give these back
              </Button>
            ) : null}
          </p>
        ) : null}
      </div>
    </>
  )
}

const targetName = (target: string, names: Names): string =>
  names.step(target) ? names.stepName(target) : names.dish(target) ? names.dishName(target) : names.courseName(target)

interface PartProps {
  readonly part: Part
  readonly names: Names
  readonly mayTake: boolean
  readonly isTicked: boolean
  readonly onTick: () => void
}

function PartLine({ part, names, mayTake, isTicked, onTick }: PartProps) {
  const name = partName(part.of, names)
  const reasons = part.because.map((reason) => partReasonText(reason, part.cook, names))
  const words = (
    <span>
      <b>{names.cookName(part.cook)}</b> has <b>{name}</b>: {effortText(part)}
      {part.but.length > 0 ? `, but ${part.but.map((each) => exceptionText(each, names)).join('; ')}` : ''}.
    </span>
  )
  return (
    <li>
      {mayTake ? (
        <label className={css.part}>
          <input type="checkbox" checked={isTicked} onChange={onTick} />
          {words}
        </label>
      ) : (
        <p className={css.untaken}>{words}</p>
      )}
      {reasons.length > 0 ? <p className={css.reasons}>{sentence(reasons.join('; '))}.</p> : null}
    </li>
  )
}

/** What the ticked parts would change, worked out as soon as it can be. */
function SplitPrice({ wishes }: { readonly wishes: readonly Wish[] }) {
  const { order } = usePlan()
  const { known, find } = usePrice('share out')
  const key = JSON.stringify(wishes)
  const isCurrent = order.kind === 'current' && !order.more
  // biome-ignore lint/correctness/useExhaustiveDependencies: the wishes are their text, and finding is new at every turn
  useEffect(() => {
    if (!isCurrent || wishes.length === 0) return
    const timer = setTimeout(() => void find(wishes, LONG_MS), 400)
    return () => clearTimeout(timer)
  }, [key, isCurrent])
  const price = known(wishes)
  if (wishes.length === 0) return null
  return <p role="status">{price ? changeText(price) : 'Seeing what it changes…'}</p>
}

const LONG_MS = 30_000

const changeText = ({ better, worse, moved, same }: Comparison): string => {
  if (same) return 'The running order stays as it is.'
  const said = [...worse, ...better]
  const first = said.length > 0 ? `With what is ticked: ${said.join('; ')}.` : 'With what is ticked no figure changes.'
  return moved ? `${first} ${moved}` : first
}
