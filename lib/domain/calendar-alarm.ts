/** Minutes before an entry at which a calendar may be asked to call. */
export const ALARMS: readonly number[] = [0, 5, 10, 15, 30, 60]

/** Until somebody says otherwise. */
export const USUAL_ALARM = 10

/** Minutes before each entry at which somebody's calendar calls, as a file and as an address alike; null: it does not. */
export const alarmOf = (chosen: { readonly alarm: number | null } | null): number | null =>
  chosen === null ? USUAL_ALARM : chosen.alarm
