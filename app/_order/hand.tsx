'use client'

import { type KeyboardEvent, memo, type RefObject, startTransition, useCallback, useLayoutEffect, useMemo, useRef } from 'react'
import type { Names } from '#app/_words/names.ts'
import { bandsOf } from './bands.ts'
import { useChoose } from './choose.tsx'
import { isSameLabel } from './paint-label.tsx'
import type { Label } from './picture/labels.ts'
import type { Box } from './picture/outline.ts'
import { type Picture, viewOf } from './picture/picture.ts'
import css from './picture.module.css'

interface Props {
  readonly picture: Picture
  readonly names: Names
  readonly chosen: string | null
  readonly onChoose: (key: string) => void
  readonly onZoom: (by: 1 | -1) => void
}

/** What lies over the drawing for the hand and the keyboard: one target for each line of each cook (drawing rule 13). */
export function Hand({ picture, names, chosen, onChoose, onZoom }: Props) {
  const { chooseClash } = useChoose()
  const hand = useRef<SVGSVGElement>(null)
  const bands = useMemo(() => bandsOf(picture), [picture])
  // Each target keeps what it does when the order is replaced.
  const latest = useRef(picture)
  useLayoutEffect(() => {
    latest.current = picture
  }, [picture])
  const isHeld = useRef(false)
  const labels = useKept(picture.labels, isHeld)
  const tabStop = (picture.labels.find((label) => label.key === chosen) ?? picture.labels[0])?.key

  const onKey = useCallback(
    (event: KeyboardEvent, label: Label) => {
      const picture = latest.current
      if (event.key === 'Enter' || event.key === ' ') {
        event.preventDefault()
        onChoose(label.key)
        return
      }
      if (event.key === '+' || event.key === '=' || event.key === '-') {
        event.preventDefault()
        // The drawing keeps the chosen line in its place: this one, although what is said about it may not be there yet.
        onChoose(label.key)
        onZoom(event.key === '-' ? -1 : 1)
        return
      }
      const next = move(picture, label, event.key)
      if (!next) return
      event.preventDefault()
      // The ring is on the next line at once; what is said about it may take a moment longer.
      startTransition(() => onChoose(next.key))
      const target = hand.current?.querySelector(`[data-key="${CSS.escape(next.key)}"]`)
      if (target instanceof SVGElement) {
        target.focus({ preventScroll: true })
        keepInView(target, picture.shape === 'phone' ? 0.5 : 1)
      }
    },
    [onChoose, onZoom],
  )
  const onTap = useCallback(
    (target: SVGElement, label: Label) => {
      startTransition(() => onChoose(label.key))
      if (latest.current.shape === 'phone') keepInView(target, 0.5)
    },
    [onChoose],
  )

  return (
    // biome-ignore lint/a11y/useSemanticElements: a group of targets inside an SVG has no HTML element
    <svg
      ref={hand}
      className={`${css.hand} ${picture.shape === 'phone' ? css.phone : ''}`}
      {...viewOf(picture)}
      role="group"
      onFocus={() => {
        isHeld.current = true
      }}
      onBlur={() => {
        isHeld.current = false
      }}
      aria-label="Steps in the drawing. Up and down walk one cook’s steps, left and right change cook, plus and minus zoom."
    >
      {picture.hatches.map(({ key, clash, box }) => (
        // biome-ignore lint/a11y/noStaticElementInteractions: for the hand alone; the keyboard opens the same beside the drawing
        <rect className={css.target} key={key} {...box} onClick={() => chooseClash(clash)} />
      ))}
      {labels.map((label) => {
        const band = bands.get(label.key)
        return band ? (
          <Target
            key={label.key}
            label={label}
            x={band.x}
            y={band.y}
            width={band.width}
            height={band.height}
            cook={names.cookName(label.doing.cook)}
            isStop={label.key === tabStop}
            isChosen={label.key === chosen}
            onTap={onTap}
            onKey={onKey}
          />
        ) : null
      })}
    </svg>
  )
}

/**
 * The lines from first to last of each cook; while the keyboard is on one of them, in the order in which they stand in the page already:
 * to move what has the focus takes it away, and laying everything out for giving it back would take as long as the new order itself.
 */
const useKept = (labels: readonly Label[], isHeld: RefObject<boolean>): readonly Label[] => {
  const last = useRef<readonly Label[]>(labels)
  const kept = isHeld.current ? inOrderOf(last.current, labels) : labels
  useLayoutEffect(() => {
    last.current = kept
  })
  return kept
}

const inOrderOf = (before: readonly Label[], labels: readonly Label[]): readonly Label[] => {
  const at = new Map(before.map(({ key }, index) => [key, index]))
  return labels.toSorted((a, b) => (at.get(a.key) ?? before.length) - (at.get(b.key) ?? before.length))
}

interface TargetProps extends Box {
  readonly label: Label
  readonly cook: string
  /** The one line that Tab leads to. */
  readonly isStop: boolean
  readonly isChosen: boolean
  readonly onTap: (target: SVGElement, label: Label) => void
  readonly onKey: (event: KeyboardEvent, label: Label) => void
}

/** There are hundreds of them, and choosing a line changes two. */
const Target = memo(
  function Target({ label, x, y, width, height, cook, isStop, isChosen, onTap, onKey }: TargetProps) {
    return (
      // biome-ignore lint/a11y/useSemanticElements: SVG has no button
      <g
        className={css.hit}
        data-key={label.key}
        role="button"
        tabIndex={isStop ? 0 : -1}
        aria-pressed={isChosen}
        aria-label={`${label.clock} ${label.doing.words}${label.doing.tail}, ${cook}`}
        onClick={(event) => onTap(event.currentTarget, label)}
        onKeyDown={(event) => onKey(event, label)}
      >
        <rect className={css.target} x={x} y={y} width={width} height={height} />
        <rect
          className={css.ring}
          x={label.box.x - 6}
          y={label.box.y - 1.5}
          width={label.box.width + 12}
          height={label.box.height + 4}
          rx={5}
        />
      </g>
    )
  },
  ({ label, ...one }, { label: other, ...two }) =>
    isSameLabel(label, other) && (Object.keys(one) as (keyof typeof one)[]).every((name) => one[name] === two[name]),
)

/** Where a key leads from a line. */
const move = (picture: Picture, label: Label, key: string): Label | undefined => {
  const own = picture.labels.filter((other) => other.column === label.column)
  const at = own.findIndex((other) => other.key === label.key)
  const cooks = picture.columns.cooks.map((column) => column.id)
  switch (key) {
    case 'ArrowDown':
      return own[at + 1]
    case 'ArrowUp':
      return own[at - 1]
    case 'Home':
      return own[0]
    case 'End':
      return own[own.length - 1]
    case 'ArrowLeft':
    case 'ArrowRight': {
      const next = cooks[cooks.indexOf(label.column) + (key === 'ArrowLeft' ? -1 : 1)]
      const others = picture.labels.filter((other) => other.column === next)
      const distance = (other: Label) => Math.abs(other.doing.from - label.doing.from)
      return others.reduce<Label | undefined>(
        (best, other) => (!best || distance(other) < distance(best) ? other : best),
        undefined,
      )
    }
  }
  return undefined
}

/** What stays at the top of the screen over the drawing. */
const HEADS = 110

/** Out from under the heads; on a phone the panel covers the lower half: what was chosen moves up out of it. */
const keepInView = (element: SVGElement, lowest = 1) => {
  const { top, bottom } = element.getBoundingClientRect()
  if (bottom < window.innerHeight * lowest && top > HEADS) return
  const calm = window.matchMedia('(prefers-reduced-motion: reduce)').matches
  window.scrollBy({ top: top - Math.max(HEADS + 10, window.innerHeight * 0.25), behavior: calm ? 'auto' : 'smooth' })
}
