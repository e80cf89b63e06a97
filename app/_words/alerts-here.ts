import type { Calls } from '#app/_alerts/calls.ts'
import type { Choices, Shape } from '#app/_alerts/choices.ts'
import type { SoundState } from '#app/_alerts/sound.ts'
import type { Awake } from '#app/_alerts/wake-lock.ts'

/** How a device calls its cook just now: what was chosen, and what of it can be had here. */
export interface AlertsHere {
  readonly shape: Shape
  readonly choices: Choices
  readonly sound: SoundState
  readonly canSpeak: boolean
  readonly canVibrate: boolean
  readonly awake: Awake
  readonly calls: Calls
  /** The page came over plain http from another machine: browsers then take these things away. */
  readonly isPlain: boolean
}

const joined = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`

/** The state in one line. What does not work yet, and why, goes before all else. */
export const alertsLine = ({ shape, choices, sound, canSpeak, canVibrate, awake, calls }: AlertsHere): string => {
  const does = [
    ...(shape === 'table' || !choices.sound || sound === 'none' ? [] : ['rings']),
    ...(shape !== 'table' && choices.speech && canSpeak ? ['says what it is'] : []),
    ...(choices.vibration && canVibrate ? [shape === 'table' ? 'vibrates once' : 'vibrates'] : []),
    ...(awake === 'on' ? ['stays lit'] : []),
    ...(calls.kind === 'on' ? ['is called while it sleeps'] : []),
  ]
  return does.length === 0 ? 'This device makes no sound and no sign but on the screen.' : `This device ${joined(does)}.`
}

/** Said where sound is wanted and the browser waits for a touch; null when there is nothing to wait for. */
export const lockedText = ({ shape, choices, sound }: AlertsHere): string | null =>
  shape !== 'table' && (choices.sound || choices.speech) && sound === 'locked'
    ? 'Tap anywhere once, so that this device may ring.'
    : null

/** What cannot be had here, why, and what to do instead. */
export const lackTexts = (here: AlertsHere): readonly string[] => {
  const { sound, canVibrate, awake, calls, isPlain } = here
  return [
    ...(isPlain
      ? [
          'This address is plain http: browsers then keep no page for when the network is gone, keep no screen lit and call no phone that sleeps. Sound works, so keep this page open and set the screen to stay lit in the device’s own settings.',
        ]
      : []),
    ...(sound === 'none' ? ['This browser makes no sounds.'] : []),
    ...(canVibrate ? [] : ['This device does not vibrate for web pages.']),
    ...(awake === 'none' && !isPlain ? ['This browser cannot keep the screen lit: set it so in the device’s own settings.'] : []),
    ...(awake === 'refused' ? ['The device did not allow the screen to stay lit; a low battery can be the reason.'] : []),
    ...(isPlain ? [] : callsLack(calls)),
  ]
}

/** Why a device is not called while it sleeps; empty when it can be. */
export const callsLack = (calls: Calls): readonly string[] => {
  switch (calls.kind) {
    case 'on':
    case 'off':
      return []
    case 'no-worker':
      return ['This browser keeps no page for when the network is gone, and is not called while it sleeps.']
    case 'no-push':
      return [
        'This browser is not called while it sleeps. On some phones it is, once Tableward is on the home screen and opened from there.',
      ]
    case 'denied':
      return [
        'Notifications are turned off for this site: allow them in the browser’s settings to be called while this device sleeps.',
      ]
  }
}

export const SILENT_SWITCH = 'A phone that is set to silent may not ring either.'

/** When turning it on failed. */
export const CALLS_FAILED =
  'This device could not be signed up for calls: the browser’s own service for them was not reached. Try again later.'
