// Words that change neither what a food weighs in a cup nor what is thrown away of it.
const IDLE = new Set([
  'fresh',
  'freshly',
  'organic',
  'good',
  'quality',
  'cold',
  'warm',
  'softened',
  'melted',
  'raw',
  'large',
  'medium',
  'small',
])

/**
 * How a food is looked up in the tables: lower case, without what follows a comma or bracket and without idle words. A table's name
 * must equal it, so that rice flour is never taken for rice nor butter beans for butter.
 */
export const foodKeys = (food: string): readonly string[] => {
  const whole = food.toLowerCase().slice(0, 200).trim()
  const head = whole.split(/[,(;]/)[0]?.trim() ?? ''
  const plain = head
    .split(/\s+/)
    .filter((word) => !IDLE.has(word))
    .join(' ')
  return [...new Set([whole, head, plain])].filter(Boolean)
}
