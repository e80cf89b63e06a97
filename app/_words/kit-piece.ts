import type { KitChange } from '#lib/domain/kit-changes.ts'
import type { Kit } from '#lib/domain/kitchen.ts'
import { countOf, countText, listText, sentence } from './clock.ts'
import { coldWords, ringWords } from './kit.ts'

/** A piece of kit with its numbers: "two medium rings", "oven with two shelves, up to 250°". */
export const kitText = (kit: Kit): string => {
  switch (kit.kind) {
    case 'ring':
      return countOf(kit.count, `${ringWords[kit.size]} ring`)
    case 'oven':
      return `${(kit.name || 'oven').toLowerCase()} with ${countOf(kit.shelves, 'shelf', 'shelves')}`
    case 'cold':
      return `${coldWords[kit.keep]} for ${countText(kit.places)}`
    case 'worktop':
      return `worktop for ${countText(kit.places)}`
    case 'tool':
      return kit.count === 1 ? kit.tool : `${countText(kit.count)} × ${kit.tool}`
  }
}

/** As `kitText`, with what only an oven has: how hot it gets and how fast. */
const kitDetail = (kit: Kit): string =>
  kit.kind === 'oven'
    ? `${kitText(kit)}, up to ${kit.maxC}°, ${kit.upPerMin} up and ${kit.downPerMin} down a minute`
    : kitText(kit)

/** All of a kitchen's kit in one sentence. */
export const kitchenText = (kit: readonly Kit[]): string =>
  kit.length === 0 ? 'Nothing is there yet.' : `${sentence(listText(kit.map(kitText)))}.`

/** One difference between two states of a kitchen. */
export const kitChangeText = (change: KitChange): string => {
  switch (change.kind) {
    case 'new':
      return `new: ${kitText(change.is)}`
    case 'gone':
      return `gone: ${kitText(change.was)}`
    case 'other':
      return kitText(change.was) === kitText(change.is)
        ? `now: ${kitDetail(change.is)}, before: ${kitDetail(change.was)}`
        : `now: ${kitText(change.is)}, before: ${kitText(change.was)}`
  }
}
