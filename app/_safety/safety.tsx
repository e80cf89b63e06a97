'use client'

import { memo, useId, useMemo, useState } from 'react'
import { usePlan } from '#app/_sync/use-plan.ts'
import { Fold } from '#app/_ui/fold.tsx'
import { countOf, sentence } from '#app/_words/clock.ts'
import { minutesText } from '#app/_words/duration.ts'
import type { Names } from '#app/_words/names.ts'
import { alsoSaidWords, DEFER, safetyWords, whenText } from '#app/_words/safety.ts'
import { sourceText } from '#app/_words/source.ts'
import type { RunningOrder } from '#lib/domain/running-order.ts'
import type { Finding } from '#lib/safety/finding.ts'
import { alsoSaid, safetyRules } from '#lib/safety/rules.ts'
import { dishTimes, safetyOf, softLimits } from '#lib/safety/safety-of.ts'
import { FixButton } from './fix-button.tsx'
import css from './safety.module.css'

interface Props {
  readonly order: RunningOrder
  readonly names: Names
}

/** What the rules of the evening say of the food over this order: what is beyond them first, what to do, and how long each dish stands. */
export const Safety = memo(function Safety({ order, names }: Props) {
  const { evening } = usePlan()
  const [isHot, setHot] = useState(false)
  const hotId = useId()
  const found = useMemo(() => safetyOf(evening, order, { isHot }), [evening, order, isHot])
  const times = useMemo(() => dishTimes(evening, order, { isHot }), [evening, order, isHot])
  const soft = useMemo(() => softLimits(evening, order, { isHot }), [evening, order, isHot])
  const beyond = found.filter(({ weight }) => weight === 'beyond')
  const rest = found.filter(({ weight }) => weight !== 'beyond')
  const rules = safetyRules(evening.rules)
  return (
    <section className={css.safety} aria-labelledby="food-safety">
      <h2 id="food-safety">Food safety</h2>
      {beyond.length === 0 ? (
        <p className={css.quiet}>Nothing was found that is beyond the rules. That does not make it safe: {DEFER.toLowerCase()}</p>
      ) : (
        <>
          <p className={css.count}>
            {sentence(countOf(beyond.length, 'thing'))} beyond the rules. {DEFER}
          </p>
          <ul>
            {beyond.map((finding) => (
              <Beyond key={keyOf(finding)} finding={finding} names={names} />
            ))}
          </ul>
        </>
      )}
      {soft.length > 0 ? (
        <p className={css.quiet}>
          {sentence(countOf(soft.length, 'limit'))} this order keeps, but the plan does not ask for.{' '}
          <FixButton fixes={soft} names={names} words={soft.length === 1 ? 'Make it hard' : 'Make them hard'} />
        </p>
      ) : null}
      {rest.length > 0 ? (
        <Fold title={`What to do (${rest.length})`}>
          <ul>
            {rest.map((finding) => (
              <Todo key={keyOf(finding)} finding={finding} names={names} />
            ))}
          </ul>
        </Fold>
      ) : null}
      {times.length > 0 ? (
        <Fold title="How long each dish stands">
          <ul className={css.times}>
            {times.map(({ dish, since, minutes, most, leftoversBy, unsure }) => (
              <li key={dish}>
                <b>{names.dishName(dish)}</b>
                <span>{minutesText(Math.round(minutes))}</span>
                <small>
                  from {whenText(evening, since)} to the table
                  {minutes > most
                    ? '; nothing of it is kept'
                    : `; what is left, in the fridge by ${whenText(evening, leftoversBy)}`}
                  {unsure ? '; ingredients not known' : ''}
                </small>
              </li>
            ))}
          </ul>
          <p className={css.quiet}>
            Counted from the heat or the fridge as if it cooled at once. At most {minutesText(times[0]?.most ?? 0)}:{' '}
            {sourceText((isHot ? rules.outHot : rules.out).source)}.
          </p>
        </Fold>
      ) : null}
      <Fold title="The rules">
        <p className={css.quiet}>
          Cold is {rules.coldC.value}° or colder ({sourceText(rules.coldC.source)}), hot is {rules.hotC.value}° or hotter (
          {sourceText(rules.hotC.source)}).
          {alsoSaid(evening.rules).map((each) => ` For information: ${alsoSaidWords[each]}.`)}
        </p>
        <p className={css.hot}>
          <input id={hotId} type="checkbox" checked={isHot} onChange={(event) => setHot(event.target.checked)} />
          <label htmlFor={hotId}>It is hotter than 32° where food stands: one hour instead of two</label>
        </p>
      </Fold>
    </section>
  )
})

export const keyOf = ({ kind, dish, step, from }: Finding): string => `${kind} ${dish} ${step} ${from}`

interface FindingProps {
  readonly finding: Finding
  readonly names: Names
}

export function Beyond({ finding, names }: FindingProps) {
  const { evening } = usePlan()
  const { says, todo, rule } = safetyWords(finding, names, evening)
  return (
    <li className={css.beyond}>
      <p>
        <span className="vh">Beyond the rules: </span>
        <b>{says}</b> {todo} <small>{rule}.</small>
      </p>
      {finding.kind === 'out'
        ? finding.fixes.map((fix) => (
            <p key={fix.kind}>
              <FixButton fixes={[fix]} names={names} />
            </p>
          ))
        : null}
    </li>
  )
}

export function Todo({ finding, names }: FindingProps) {
  const { evening } = usePlan()
  const { says, todo, rule } = safetyWords(finding, names, evening)
  return (
    <li className={css.todo}>
      {says} {todo} <small>{rule}.</small>
    </li>
  )
}
