'use client'

import type { ReactNode } from 'react'
import { Button, LinkButton } from '#app/_ui/button.tsx'
import { Ready } from '#app/_ui/ready.tsx'
import { WordChoice } from '#app/_ui/word.tsx'
import { type PaperSize, paperWords } from '#app/_words/print.ts'
import css from './print.module.css'

interface Props {
  readonly title: string
  readonly back: string
  readonly paper: PaperSize
  readonly onPaper: (paper: PaperSize) => void
  readonly across?: boolean
  /** Choices beside the paper's, and what is to be known before it is printed. */
  readonly choices?: ReactNode
  readonly note?: string | null
  readonly children: ReactNode
}

/** A page to print: on the screen with what can be chosen of it, on paper itself alone, in black on white. */
export function Paper({ title, back, paper, onPaper, across = false, choices, note, children }: Props) {
  return (
    <main id="main" className={css.main} data-paper={paper} data-across={across}>
      <Ready />
      <style>{`@page { size: ${paper === 'a4' ? 'A4' : 'letter'} ${across ? 'landscape' : 'portrait'}; margin: 11mm; }`}</style>
      <div className={css.bar}>
        <h1>{title}</h1>
        <p className={css.choices}>
          On{' '}
          <WordChoice
            label="Paper"
            value={paper}
            options={[
              ['a4', paperWords.a4],
              ['letter', paperWords.letter],
            ]}
            onChoose={onPaper}
          />
          {choices}
        </p>
        <p className={css.actions}>
          <Button onClick={() => window.print()}>Print</Button>
          <LinkButton tone="word" href={back}>
            All there is to print
          </LinkButton>
        </p>
        {note ? (
          <p className={css.note} role="status">
            {note}
          </p>
        ) : null}
      </div>
      <div className={css.papers}>{children}</div>
    </main>
  )
}
