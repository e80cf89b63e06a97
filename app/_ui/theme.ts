export const THEME_COOKIE = 'theme'
export type Theme = 'light' | 'dark'

/** A theme chosen by hand; null follows the device. */
export const readTheme = (value: string | undefined): Theme | null => (value === 'light' || value === 'dark' ? value : null)
