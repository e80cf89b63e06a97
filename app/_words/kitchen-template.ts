import type { KitchenTemplate } from '#lib/domain/kitchen-templates.ts'

/** What each kind of kitchen is called, and for whom it is. */
export const templateWords: Readonly<Record<KitchenTemplate, { readonly name: string; readonly about: string }>> = {
  'one-oven': { name: 'One oven, four rings', about: 'as most homes have it' },
  small: { name: 'A small kitchen', about: 'one oven with one shelf, two rings' },
  'two-ovens': { name: 'Two ovens', about: 'five rings and a long worktop' },
  'no-oven': { name: 'A flat without an oven', about: 'two rings, a fridge, a sink' },
  hall: { name: 'A hall', about: 'two big ovens, six rings, much room' },
  'cold-only': { name: 'No cooking, only cold', about: 'a fridge, a sink and somewhere to plate' },
}
