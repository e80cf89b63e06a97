import { stopCalls } from './calls.ts'
import { forgetPages } from './keep-pages.ts'

/** Before somebody else may use this device: no page of this person is kept on it, and they are not called here. */
export const forgetDevice = async (): Promise<void> => {
  for (const step of [stopCalls, forgetPages])
    await step().catch((why: unknown) => console.warn('something of this person may be left on this device', why))
}
