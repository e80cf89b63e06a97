import type { Because, DrinkKind } from '#lib/drinks/pairing.ts'

/** What a kind is called as a drink of the menu: to be written over with the bottle that it becomes. */
export const drinkKindWords: Readonly<Record<DrinkKind, string>> = {
  'dry-sparkling': 'Dry sparkling wine',
  'crisp-white': 'Crisp dry white',
  'round-white': 'Round dry white',
  'dry-rose': 'Dry rosé',
  'light-red': 'Light red, a little cool',
  'full-red': 'Full red',
  'sweet-wine': 'Sweet wine',
  'dry-fortified': 'Dry fortified wine',
  'dry-cider': 'Dry cider',
  'wheat-beer': 'Pale beer',
  'citrus-water': 'Sparkling water with lemon',
  'verjus-soda': 'Verjus and soda',
  'apple-juice': 'Pressed apple juice',
  'cold-tea': 'Cold tea',
  'dark-fruit-tea': 'Dark fruit and black tea',
  'ginger-soda': 'Ginger and soda',
  'sweet-grape': 'Sweet grape juice, lemon',
  'warm-apple': 'Warm spiced apple juice',
}

/** Why it goes with the course, as half a sentence. */
export const pairingWords: Readonly<Record<Because, string>> = {
  'to-begin': 'bubbles to begin',
  'light-with-light': 'light with what is light',
  'full-with-full': 'full with what is full',
  'acid-with-fat': 'its sharpness against the fat',
  'acid-with-acid': 'as sharp as the dish',
  'sweet-not-drier': 'no drier than the dessert',
  'fresh-with-salt': 'fresh against the salt',
  'mild-with-hot': 'mild with what is hot',
  'tannin-with-meat': 'its grip with red meat',
  'bubbles-with-fat': 'bubbles against the fat',
}
