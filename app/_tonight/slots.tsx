'use client'

import type { ComponentType } from 'react'

/** A place on the board that is empty. */
const nothing: ComponentType = () => null

/** Sound, the screen kept on, alerts while the phone sleeps. */
export const AlertsBar = nothing
