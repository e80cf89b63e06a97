import { PAYLOADS } from './payloads.ts'

const LONG = 6000

/** Words that mean harm, or are merely strange: markup, scripts, bombs, controls, names of prototypes, half characters. */
const BASES: readonly string[] = [
  '<script>alert(1)</script>',
  '<img src=x onerror=alert(1)>',
  '"><svg/onload=alert(1)>',
  "'-alert(1)-'",
  'javascript:alert(1)',
  '</script><script>alert(1)</script>',
  '<!--<script>',
  '<style>*{display:none}</style>',
  '&lt;script&gt;alert(1)&lt;/script&gt;',
  '&#x3c;b&#x3e;&#0;&#xd800;&#x110000;&notanentity;',
  '{{constructor.constructor("alert(1)")()}}',
  '$' + '{process.exit(1)}',
  '__proto__',
  'constructor',
  'hasOwnProperty toString valueOf',
  '=cmd|calc!A1',
  "1'; DROP TABLE dishes; --",
  '../../etc/passwd',
  '\u0000\u0001\u0007\u001b[31m',
  '\u202ereversed\u202c',
  '\ufeff\u200b\u2028\u2029',
  '\ud83c lonely \udf55',
  '🍕'.repeat(500),
  'a\u0301'.repeat(2000),
  '1'.repeat(LONG),
  '1/2 '.repeat(LONG / 4),
  '1,'.repeat(LONG / 2),
  '½'.repeat(LONG),
  ' '.repeat(LONG),
  '\t'.repeat(LONG),
  '('.repeat(LONG),
  ')'.repeat(LONG),
  '-'.repeat(LONG),
  '. '.repeat(LONG / 2),
  'minutes '.repeat(LONG / 8),
  '10 minutes to '.repeat(LONG / 14),
  '180°C / '.repeat(LONG / 8),
  'until '.repeat(LONG / 6),
  'with , and '.repeat(LONG / 11),
  '999999999999999999999 cups 1/0 minutes 0/0 °C -5 hours NaN Infinity 1e999 g',
]

const page = (words: string): string => `<html><body><h1>${words}</h1><p>1 egg</p><p>${words}</p></body></html>`
const data = (words: string): string =>
  JSON.stringify({
    '@type': 'Recipe',
    name: words,
    recipeYield: words,
    prepTime: words,
    suitableForDiet: words,
    recipeIngredient: [words, `1 cup ${words}`],
    recipeInstructions: [words, { '@type': 'HowToSection', name: words, itemListElement: [{ text: words }] }],
  })

const nested = (depth: number, open: string, shut: string): string => open.repeat(depth) + shut.repeat(depth)

const FORMS: readonly ((words: string) => string)[] = [
  (words) => words,
  (words) => `Dish\nServes 4\n\nIngredients\n${words}\n1 cup ${words}\n\nMethod\n1. ${words}`,
  (words) => `Dish\n1 egg\n\nMethod\n1. Bake ${words} for 10 minutes ${words} at 180C.`,
  page,
  data,
]

/** Each base and each payload as plain text, in a list, in a method, on a page or as linked data; and structures made to hurt. */
export const HOSTILE: readonly string[] = [
  ...BASES.flatMap((words) => FORMS.map((form) => form(words))),
  ...PAYLOADS.map((words, i) => FORMS[i % FORMS.length]?.(words) ?? words),
  nested(100_000, '[', ']'),
  nested(50_000, '{"@graph":', '}'),
  nested(100_000, '<div>', ''),
  `[${'{"@type":"Recipe"},'.repeat(20_000)}null]`,
  '{"@type":"Recipe","__proto__":{"name":"x"},"constructor":1,"recipeIngredient":{"length":5}}',
  '{"@type":["Recipe"],"name":{"@value":"x"},"recipeInstructions":{"itemListElement":{"itemListElement":[]}}}',
  `<script type="application/ld+json">${'{"a":'.repeat(1000)}</script>`,
  '<script type="application/ld+json">{"@type":"Recipe","name":"a</script><script>alert(1)</script>"}',
  '<script type="application/ld+json">',
  '',
  '\n\n\n',
  '{',
]
