import type { KeepHow } from '#lib/domain/menu.ts'

/** How something is carried, behind its name: "Carry the tart cold". */
export const keptWords: Readonly<Record<KeepHow, string>> = {
  hot: 'hot',
  warm: 'warm',
  room: 'as it is',
  cold: 'cold',
  frozen: 'frozen',
}
