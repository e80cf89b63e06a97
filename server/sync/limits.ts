/** What one socket, one member and one room may take of the server. */
export const LIMITS = {
  /** Bytes of one message. */
  payload: 256 * 1024,
  fragments: 64,
  socketsAUser: 8,
  socketsARoom: 300,
  /** Messages a second, and how many may come at once after a silence. */
  messagesASecond: 50,
  burst: 200,
  /** Bytes that a slow reader may leave waiting. */
  waiting: 1024 * 1024,
  presenceBytes: 1024,
  /** Messages that may come while the plan is still being loaded. */
  beforeOpen: 64,
  /** Yjs client ids that one update may bring along for the first time: a device makes one at each reload. */
  newClients: 256,
  /** Updates of a room on their way to the disk. */
  queue: 5000,
} as const

export const TIMES = {
  beat: 5_000,
  /** A ping goes out every third beat; a socket that has said nothing for this long is dead. */
  silence: 30_000,
  /** The plan is told of at most this often. */
  tell: 100,
  /** A room that is held is loaded again so long after it could not be read or stored. */
  reload: 1_000,
} as const

/** When the log of a plan is folded into a snapshot. */
export const COMPACT = { updates: 500, bytes: 512 * 1024 } as const

/** Rooms without a socket that stay in memory. */
export const IDLE_ROOMS = 50

/** Close codes after which a client comes again. */
export const AGAIN = {
  restart: 1012,
  tooFast: 1008,
  tooMany: 1013,
  broken: 1011,
  /** The server and this client no longer agree on what was sent: the resync after reconnecting puts it right. */
  resync: 4500,
} as const
