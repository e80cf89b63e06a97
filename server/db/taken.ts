/** Whether a write was refused because another row has that value already (Prisma's P2002). */
export const isTaken = (cause: unknown): boolean => cause instanceof Error && 'code' in cause && cause.code === 'P2002'
