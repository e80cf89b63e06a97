'use client'

import { usePlan } from '#app/_sync/use-plan.ts'
import { Button } from '#app/_ui/button.tsx'
import { Comparing } from './comparing.tsx'
import { useLook } from './look.tsx'
import css from './look-banner.module.css'

/** Above the order while a change is looked at: what it is, what it would make better and worse, and keeping or leaving it. */
export function LookBanner() {
  const { order } = usePlan()
  const { look, seen, leave } = useLook()
  if (!look) return null
  return (
    <section className={css.banner} aria-label="What you are looking at">
      <div role="status" className={css.says}>
        <p>
          You are looking at: <b>{look.title}</b>. Nobody else sees it.
        </p>
        {seen.kind === 'trying' ? (
          <p className={css.quiet}>
            {order.kind === 'current' && !order.more ? 'Being tried…' : 'It is tried as soon as the running order is there.'}
          </p>
        ) : seen.kind === 'wrong' ? (
          <p className={css.wrong}>{seen.why}</p>
        ) : (
          <>
            {seen.again ? <p className={css.quiet}>The plan has changed meanwhile: being tried again on the newest.</p> : null}
            <Comparing trial={seen.trial} />
          </>
        )}
      </div>
      <div className={css.does}>
        {look.barred === null ? (
          <Button
            disabled={seen.kind === 'wrong'}
            onClick={() => {
              leave()
              look.keep()
            }}
          >
            {look.keepWords}
          </Button>
        ) : (
          <p className={css.quiet}>{look.barred}</p>
        )}
        <Button tone="soft" onClick={leave}>
          Leave it
        </Button>
      </div>
    </section>
  )
}
