import { means, type Parts, type Said, within, wrong } from '#app/_ui/parts.ts'
import { countOf, countText, sentence } from '#app/_words/clock.ts'
import { durationText, readDuration } from '#app/_words/duration.ts'
import { HIGHEST_C, heatMeans, heatText, LOWEST_C, readHeat } from '#app/_words/heat.ts'
import { coldWords, ringWords } from '#app/_words/kit.ts'
import { readCount } from '#app/_words/read-count.ts'
import { cleanText } from '#lib/domain/atoms.ts'
import { secondsOf } from '#lib/domain/duration.ts'
import type { Kitchen, Use } from '#lib/domain/kitchen.ts'
import { lackText } from './kit-lack.ts'

/** Where the uses stand, in which kitchen, and where that can be changed. */
export interface UseScene {
  readonly kitchen: Kitchen | undefined
  readonly kitchens: string
  readonly at: string
  readonly named: (what: string) => string
}

type Uses = readonly Use[]
const MOST_USES = 6
const MOST_PLACES = 60
const NONE = 'none'
const OTHER_TOOL = 'tool'

const same = (a: string, b: string) => a.trim().toLowerCase() === b.trim().toLowerCase()
const toolsOf = (kitchen: Kitchen | undefined): readonly string[] => [
  ...new Set((kitchen?.kit ?? []).flatMap((kit) => (kit.kind === 'tool' ? [kit.tool] : []))),
]

/** What can be chosen in one tap, each as a use that is most often meant by it. */
const choicesIn = (kitchen: Kitchen | undefined): readonly (readonly [key: string, words: string, use: Use])[] => [
  ['oven', 'the oven', { kind: 'oven', shelves: 1, lowC: 180, highC: 190, preheated: true }],
  ...(['small', 'medium', 'large'] as const).map(
    (size) => [`ring ${size}`, `a ${ringWords[size]} ring`, { kind: 'ring', size }] as const,
  ),
  ['worktop', 'the worktop', { kind: 'worktop', places: 1 }],
  ...(['cold', 'frozen'] as const).map(
    (keep) => [`cold ${keep}`, `the ${coldWords[keep]}`, { kind: 'cold', keep, places: 1 }] as const,
  ),
  ...toolsOf(kitchen).map((tool) => [`tool ${tool}`, `the ${tool}`, { kind: 'tool', tool, count: 1 }] as const),
  [OTHER_TOOL, 'a tool that I name', { kind: 'tool', tool: 'tool', count: 1 }],
]

const keyOf = (use: Use, kitchen: Kitchen | undefined): string => {
  switch (use.kind) {
    case 'oven':
    case 'worktop':
      return use.kind
    case 'ring':
      return `ring ${use.size}`
    case 'cold':
      return `cold ${use.keep}`
    case 'tool': {
      const known = toolsOf(kitchen).find((tool) => same(tool, use.tool))
      return known === undefined ? OTHER_TOOL : `tool ${known}`
    }
  }
}

const PREPOSITION: Readonly<Record<Use['kind'], string>> = { oven: 'in', ring: 'on', cold: 'in', worktop: 'on', tool: 'with' }

/** What is chosen in place of a use: as many places as before where it is the same kind of thing. */
const inPlaceOf = (before: Use, chosen: Use): Use => {
  if (before.kind === 'cold' && chosen.kind === 'cold') return { ...chosen, places: before.places }
  if (before.kind === 'tool' && chosen.kind === 'tool') return { ...chosen, count: before.count }
  return chosen
}

/** " in the oven at 190 to 200°, one shelf, already hot, and with the blender": empty without kit. */
export const usesParts = (uses: Uses, scene: UseScene): Parts<Uses> =>
  uses.flatMap((use, index): Parts<Uses> => {
    const at = `${scene.at}.${index}`
    const named = (what: string) => scene.named(`kit ${index + 1}${what ? `, ${what}` : ''}`)
    const choices = choicesIn(scene.kitchen)
    const put = (next: Use): Uses => uses.map((other, place) => (place === index ? next : other))
    return [
      index === 0 ? ' ' : index === uses.length - 1 ? ' and ' : ', ',
      `${PREPOSITION[use.kind]} `,
      {
        kind: 'choice',
        at: `${at}.kind`,
        label: named(''),
        value: keyOf(use, scene.kitchen),
        options: [...choices.map(([key, words]) => [key, words] as const), [NONE, 'nothing after all']],
        choose: (chosen) => {
          if (chosen === keyOf(use, scene.kitchen)) return means(uses)
          const found = choices.find(([key]) => key === chosen)
          return means(found ? put(inPlaceOf(use, found[2])) : uses.filter((_, place) => place !== index))
        },
      },
      ...within(useParts(use, { ...scene, at, named }), put),
      ...lackParts(use, { ...scene, at }),
    ]
  })

/** "Besides, it takes …": one more piece of kit. */
export const moreKitParts = (uses: Uses, scene: UseScene): Parts<Uses> =>
  uses.length >= MOST_USES
    ? []
    : [
        uses.length === 0 ? 'It takes ' : 'Besides, it takes ',
        {
          kind: 'choice',
          at: `${scene.at}.more`,
          label: scene.named('add kit'),
          value: NONE,
          options: [
            [NONE, uses.length === 0 ? 'no kit' : 'nothing else'],
            ...choicesIn(scene.kitchen).map(([key, words]) => [key, words] as const),
          ],
          choose: (chosen) => {
            const found = choicesIn(scene.kitchen).find(([key]) => key === chosen)
            return means(found ? [...uses, found[2]] : uses)
          },
        },
        '. ',
      ]

const lackParts = (use: Use, { kitchen, kitchens, at }: UseScene): Parts<never> => {
  const lack = lackText(use, kitchen)
  return lack === null
    ? []
    : [{ kind: 'note', at: `${at}.lack`, words: lack, tone: 'amiss', link: { href: kitchens, words: 'Change the kitchen' } }]
}

const counted =
  <T>(most: number, make: (count: number) => T) =>
  (text: string): Said<T> => {
    const count = readCount(text)
    return count !== null && count <= most ? means(make(count)) : wrong(`Write a whole number from 1 to ${most}.`)
  }

const useParts = (use: Use, { kitchen, at, named }: UseScene): Parts<Use> => {
  switch (use.kind) {
    case 'ring':
      return []
    case 'oven':
      return [
        ' at ',
        {
          kind: 'text',
          at: `${at}.heat`,
          label: named('temperature'),
          text: heatText(use.lowC, use.highC),
          write: (text) => {
            const heat = readHeat(text)
            return heat === null
              ? wrong('Write degrees, the lower first, such as 190 to 200°, 375 F, gas 5 or 180 fan.')
              : means({ ...use, lowC: heat[0], highC: heat[1] })
          },
        },
        ', ',
        {
          kind: 'text',
          at: `${at}.shelves`,
          label: named('shelves'),
          text: countOf(use.shelves, 'shelf', 'shelves'),
          write: counted(8, (shelves) => ({ ...use, shelves })),
        },
        ', ',
        {
          kind: 'choice',
          at: `${at}.preheated`,
          label: named('cold or hot'),
          value: use.preheated ? 'hot' : 'cold',
          options: [
            ['cold', 'from cold'],
            ['hot', 'already hot'],
          ],
          choose: (ready) => means({ ...use, preheated: ready === 'hot' }),
        },
        ...(use.lowC === use.highC ? giveOrTake(use, { at, named }) : []),
        { kind: 'note', at: `${at}.means`, words: `That is ${heatMeans(use.lowC, use.highC)}.`, tone: 'means' },
      ]
    case 'cold':
    case 'worktop':
      return [
        ', ',
        {
          kind: 'text',
          at: `${at}.places`,
          label: named('places'),
          text: countOf(use.places, 'place'),
          write: counted(MOST_PLACES, (places) => ({ ...use, places })),
        },
      ]
    case 'tool':
      return toolParts(
        use,
        toolsOf(kitchen).some((tool) => same(tool, use.tool)),
        { at, named },
      )
  }
}

type Oven = Extract<Use, { kind: 'oven' }>
type Place = Pick<UseScene, 'at' | 'named'>

/** Ovens are not exact, and a window lets two dishes share one. */
const giveOrTake = (use: Oven, { at, named }: Place): Parts<Use> => [
  ' ',
  {
    kind: 'press',
    at: `${at}.window`,
    label: named(`may be ${heatText(use.lowC - 10, use.highC + 10)}`),
    words: 'give or take 10°',
    press: () => means({ ...use, lowC: Math.max(LOWEST_C, use.lowC - 10), highC: Math.min(HIGHEST_C, use.highC + 10) }),
  },
]

/** A tool that the kitchen has is chosen by its name; any other one is named here. */
const toolParts = (use: Extract<Use, { kind: 'tool' }>, isKnown: boolean, { at, named }: Place): Parts<Use> => [
  ...(isKnown
    ? []
    : ([
        ', ',
        {
          kind: 'text',
          at: `${at}.tool`,
          label: named('name of the tool'),
          text: use.tool,
          write: (text) => {
            const tool = cleanText(text.trim().replace(/\s+/g, ' '), false)
            return tool === '' || tool.length > 40
              ? wrong('Name the tool in at most 40 letters, such as blender.')
              : means({ ...use, tool })
          },
        },
      ] satisfies Parts<Use>)),
  ', ',
  {
    kind: 'text',
    at: `${at}.count`,
    label: named('how many'),
    text: `${countText(use.count)} of them`,
    write: counted(MOST_PLACES, (count) => ({ ...use, count })),
  },
]

/** The rarer words about ovens: which one, and how long its door stays shut. */
export const ovenParts = (uses: Uses, scene: UseScene): Parts<Uses> =>
  uses.flatMap((use, index): Parts<Uses> => {
    if (use.kind !== 'oven') return []
    const place = { at: `${scene.at}.${index}`, named: (what: string) => scene.named(`kit ${index + 1}, ${what}`) }
    const put = (next: Use): Uses => uses.map((other, where) => (where === index ? next : other))
    return within(oneOvenParts(use, scene.kitchen, place), put)
  })

const oneOvenParts = (use: Oven, kitchen: Kitchen | undefined, { at, named }: Place): Parts<Use> => {
  const ovens = (kitchen?.kit ?? []).filter((kit) => kit.kind === 'oven')
  const { oven: _oven, ...anyOven } = use
  return [
    ...(ovens.length > 1 || use.oven !== undefined
      ? ([
          'It goes into ',
          {
            kind: 'choice',
            at: `${at}.oven`,
            label: named('which oven'),
            value: use.oven ?? '',
            options: [['', 'any oven'], ...ovens.map((oven) => [oven.id, sentence(oven.name)] as const)],
            choose: (oven) => means(oven === '' ? anyOven : { ...use, oven }),
          },
          '. ',
        ] satisfies Parts<Use>)
      : []),
    'The oven’s door stays shut for the first ',
    {
      kind: 'text',
      at: `${at}.doorShut`,
      label: named('door shut for'),
      text: use.doorShut === undefined ? '' : durationText(use.doorShut),
      empty: 'no minutes at all',
      write: (text) => {
        const { doorShut: _doorShut, ...rest } = use
        if (/^(?:no .*)?$/i.test(text.trim())) return means(rest)
        const doorShut = readDuration(text)
        if (doorShut === null) return wrong('Write minutes, such as 20 min.')
        return means(secondsOf(doorShut) === 0 ? rest : { ...use, doorShut })
      },
    },
    '. ',
  ]
}
