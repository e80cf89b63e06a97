'use client'

import { useEdit } from '#app/_frame/use-edit.ts'
import { usePlan } from '#app/_sync/use-plan.ts'
import { means, type Parts, wrong } from '#app/_ui/parts.ts'
import { Sentence } from '#app/_ui/sentence.tsx'
import { thingWords } from '#app/_words/offer.ts'
import { type House, TableThing } from '#lib/domain/offer.ts'
import { setEvening } from '#lib/plan/commands/set.ts'

/** "The house has 10 chairs, … plates and no bags of ice": what nobody has said is not counted on. */
const houseParts = (house: House): Parts<House> => [
  'The house has ',
  ...TableThing.options.flatMap((thing, index): Parts<House> => {
    const count = house[thing]
    return [
      index === 0 ? '' : index === TableThing.options.length - 1 ? ' and ' : ', ',
      {
        kind: 'text',
        at: thing,
        label: `What the house has: ${thingWords[thing]}`,
        text: count === undefined ? '' : String(count),
        empty: 'an unknown number of',
        write: (text) => {
          const { [thing]: _, ...others } = house
          if (text.trim() === '') return means(others)
          const said = /^\s*(?:no|none)\b/i.test(text) ? 0 : Number(text.trim())
          return Number.isInteger(said) && said >= 0 && said <= 1000
            ? means({ ...others, [thing]: said })
            : wrong('Write how many there are, such as 8, or leave it empty while nobody knows.')
        },
      },
      ` ${thingWords[thing]}`,
    ]
  }),
  '.',
]

/** What the house has of what a table needs, for hosts to say. */
export function HouseWords() {
  const { evening } = usePlan()
  const { change } = useEdit()
  return (
    <Sentence
      of="house"
      parts={houseParts(evening.house ?? {})}
      onEdit={(house) => change((doc) => setEvening(doc, { house: Object.keys(house).length > 0 ? house : undefined }))}
    />
  )
}
