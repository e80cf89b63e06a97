/** How many people may answer by one link. */
export const MOST_PLACES = 12

/** How many guests an evening has: its file holds no more. */
export const MOST_GUESTS = 120
