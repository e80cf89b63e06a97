'use client'

import { useEffect } from 'react'
import { browserShelf } from '#app/_sync/shelf.ts'
import { forgetDevice } from './forget-device.ts'

const KEY = 'tableward/user'

/** When somebody else has come in on this device, by a link for instance, nothing of the one before is kept or called here. */
export function OwnDevice({ userId }: { readonly userId: string }) {
  useEffect(() => {
    const shelf = browserShelf()
    const before = shelf.get(KEY)
    shelf.set(KEY, userId)
    if (before !== null && before !== userId) void forgetDevice()
  }, [userId])
  return null
}
