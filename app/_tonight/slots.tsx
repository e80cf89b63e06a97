'use client'

import type { ComponentType, ReactNode } from 'react'

/** A place on the board that is empty. */
const nothing: ComponentType = () => null

/** Guests late, a cook gone, a dish failed, an allergen got in, where are we. */
export const Moments = nothing
/** What really took how long, what is left, closing. */
export const Afterwards = nothing
/** While it plays, puts another night in place of the real one. */
export const Rehearsing = ({ children }: { readonly children: ReactNode }) => children
/** Before its day: begins to play it on this device alone. */
export const RehearseEntry = nothing
/** Sound, the screen kept on, alerts while the phone sleeps. */
export const AlertsBar = nothing
