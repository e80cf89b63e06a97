'use client'

import { WordChoice } from '#app/_ui/word.tsx'
import { shapeWords } from '#app/_words/night-shape.ts'
import css from './board.module.css'
import { SHAPES } from './device.ts'
import { useNight } from './use-night.ts'

/** One quiet line: what this device is tonight, and whose. */
export function ShapeChoice() {
  const { evening, names, shape, setShape, cook, setCook } = useNight()
  return (
    <p className={css.choice}>
      This device is{' '}
      <WordChoice
        label="What this device is tonight"
        value={shape}
        options={SHAPES.map((each) => [each, shapeWords[each]] as const)}
        onChoose={(value) => setShape(SHAPES.find((each) => each === value) ?? shape)}
      />
      {shape === 'worktop' || cook === null ? null : (
        <>
          {' '}
          of{' '}
          <WordChoice
            label="Whose board this is"
            value={cook}
            options={evening.cooks.map(({ id }) => [id, names.cookName(id)] as const)}
            onChoose={setCook}
          />
        </>
      )}
      .
    </p>
  )
}
