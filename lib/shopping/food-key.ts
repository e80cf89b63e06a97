// Words that say how it is, or what is done to it at home, and not what is bought.
const IDLE = new Set(
  'fresh freshly organic good quality best cold warm softened melted raw ripe washed peeled trimmed chopped sliced diced crushed minced grated shredded torn picked halved quartered cored deseeded roughly finely coarsely thinly room-temperature'.split(
    ' ',
  ),
)

const singular = (word: string): string => {
  if (/[^aeiou]ies$/.test(word) && word.length > 4) return `${word.slice(0, -3)}y`
  if (/(oes|ches|shes|xes|sses)$/.test(word)) return word.slice(0, -2)
  if (/leaves$/.test(word)) return `${word.slice(0, -6)}leaf`
  return /[^siu]s$/.test(word) ? word.slice(0, -1) : word
}

const LONGEST = 50

/**
 * Foods of one key are one food on the list: "Onions, finely chopped" and "onion". Without what follows a comma or bracket, the last word in
 * its singular. Two kinds of a thing stay two: "plain flour" and "bread flour", "unsalted butter" and "butter".
 */
export const foodKey = (food: string): string => {
  const head =
    food
      .toLowerCase()
      .split(/,(?!\d)|[(;]/)[0]
      ?.trim() ?? ''
  const words = head.split(/\s+/).filter((word) => word !== '' && !IDLE.has(word))
  const kept = words.length > 0 ? words : head.split(/\s+/)
  return [...kept.slice(0, -1), singular(kept.at(-1) ?? '')].join(' ').replaceAll('|', ' ').slice(0, LONGEST)
}

/** The food as it stands on the list: without what is done to it. */
export const foodName = (food: string): string => (food.split(/,(?!\d)|[(;]/)[0] ?? food).trim() || food

const READY = /\b(peeled|trimmed|cored|shelled|podded|stoned|pitted|boned|filleted|picked|deseeded|cleaned|prepared)\b/i

/**
 * Whether a recipe's weight is of what is ready to cook, by its own words: "500 g peeled potatoes", "prepared weight". What stands after a
 * comma is done to it afterwards ("1 kg potatoes, peeled") and the weight is as bought.
 */
export const isWeighedReady = (food: string): boolean => READY.test(foodName(food)) || /\bprepared weight\b/i.test(food)

const FROM_THE_TAP = /^(?:(?:cold|ice-cold|warm|hot|boiling|iced?|tap|lukewarm|tepid|salted) )*water$/i
/** Nobody buys it: water for the pan. */
export const isFromTheTap = (food: string): boolean => FROM_THE_TAP.test(foodName(food))
