'use client'

import { createContext, type ReactNode, useContext, useState } from 'react'
import css from './first-look.module.css'
import { companyOfLook, planOfLook } from './look-plan.ts'
import { lookOf } from './looks.ts'
import { CompanyContext, PlanContext } from './use-plan.ts'

const WidthContext = createContext<number | null>(null)

/** How wide the window is when this is first drawn, in CSS pixels; on the server, in a first look, how wide it probably is. */
export const useWindowWidth = (): number => {
  const probably = useContext(WidthContext)
  return useState(() => probably ?? document.documentElement.clientWidth)[0]
}

interface Props {
  readonly ticket: string
  /** The live screen has taken its place. */
  readonly isOver: boolean
  readonly children: ReactNode
}

/**
 * The screen as the server draws it from the plan as it is (decision 038): to be read until the shared plan is open, and inert so that no
 * press is lost.
 */
export function FirstLook({ ticket, isOver, children }: Props) {
  return (
    <>
      {isOver ? null : (
        <p className="vh" role="status">
          Opening the evening
        </p>
      )}
      <Drawn ticket={ticket} isOver={isOver}>
        {children}
      </Drawn>
    </>
  )
}

/** In the browser it stays as it came, unlooked at by React: an empty `__html` is not written over what is there. */
function Drawn({ ticket, isOver, children }: Props) {
  if (typeof window !== 'undefined')
    return (
      <div
        inert
        data-look
        hidden={isOver}
        className={css.look}
        suppressHydrationWarning
        // biome-ignore lint/security/noDangerouslySetInnerHtml: nothing is set; what the server drew stays
        dangerouslySetInnerHTML={{ __html: '' }}
      />
    )
  const look = lookOf(ticket)
  return (
    <div inert data-look className={css.look} suppressHydrationWarning>
      {look ? (
        <WidthContext value={look.width}>
          <CompanyContext value={companyOfLook}>
            <PlanContext value={planOfLook(look)}>{children}</PlanContext>
          </CompanyContext>
        </WidthContext>
      ) : null}
    </div>
  )
}
