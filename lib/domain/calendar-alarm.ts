/** Minutes before an entry at which a calendar may be asked to call. */
export const ALARMS: readonly number[] = [0, 5, 10, 15, 30, 60]
