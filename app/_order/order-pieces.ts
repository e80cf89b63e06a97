import dynamic from 'next/dynamic'
import { laterPiece } from '#app/_ui/later.tsx'

// What the running order's first look does without: beside the drawing, below what clashes, or only when it is asked for.

const safety = laterPiece(() => import('#app/_safety/safety.tsx').then((module) => module.Safety))
const whatIf = laterPiece(() => import('./what-if.tsx').then((module) => module.WhatIf))
const stepPanel = laterPiece(() => import('./step-panel.tsx').then((module) => module.StepPanel))
const thingPanel = laterPiece(() => import('./thing-panel.tsx').then((module) => module.ThingPanel))
const shareOut = laterPiece(() => import('#app/_share/share-out.tsx').then((module) => module.ShareOut))

export const PIECES = [stepPanel, thingPanel, whatIf, safety, shareOut]

export const Safety = dynamic(safety, { ssr: false, loading: () => null })
export const WhatIf = dynamic(whatIf, { ssr: false, loading: () => null })
export const StepPanel = dynamic(stepPanel, { ssr: false, loading: () => null })
export const ThingPanel = dynamic(thingPanel, { ssr: false, loading: () => null })
export const ShareOut = dynamic(shareOut, { ssr: false, loading: () => null })
